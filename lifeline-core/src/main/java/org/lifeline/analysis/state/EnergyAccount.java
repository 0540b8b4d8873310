package org.lifeline.analysis.state;

/**
 * Where the energy of a fall went.
 *
 * <p>fall = line + hanging + connection + friction + inlineAbsorbers + anchors + residual. In an analysis in time the
 * cable's part holds its kinetic energy and the heat of its internal damping as well, and the hanging workers' part what
 * kinetic energy workers have at the lowest point. Immutable and thread-safe.
 *
 * @param fall energy set free by those who fall, down to the lowest point [J]
 * @param cable strain energy of the cable and potential energy of its weight, by which it grew [J]
 * @param hanging potential energy by which those who hang already were lifted [J], negative when they went down
 * @param connection work taken by the connecting subsystems [J]
 * @param friction heat of friction at the anchors [J]
 * @param inlineAbsorbers work taken by in-line absorbers [J]
 * @param anchors energy by which elastic anchors grew [J]
 * @since 1.0.0
 */
public record EnergyAccount(
        double fall,
        double cable,
        double hanging,
        double connection,
        double friction,
        double inlineAbsorbers,
        double anchors) {

    /**
     * Work done on the line at the place of the fall.
     *
     * @return everything that did not go into the connecting subsystems [J]
     */
    public double lineWork() {
        return cable + hanging + friction + inlineAbsorbers + anchors;
    }

    /**
     * What does not add up.
     *
     * @return fall less all that took it [J]
     */
    public double residual() {
        return fall - lineWork() - connection;
    }
}
