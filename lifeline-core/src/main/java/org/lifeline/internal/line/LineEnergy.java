package org.lifeline.internal.line;

/**
 * The parts of the energy that a line holds or has absorbed in a state, each counted from the installed state or from a
 * fixed datum, so that only differences have a meaning.
 *
 * @param strain strain energy of the cable [J]
 * @param weight potential energy of the cable's weight [J]
 * @param springs energy of the elastic anchors, from the installed state [J]
 * @param inlineAbsorbers work taken by in-line absorbers [J]
 * @param hanging potential energy of the loads, by their positions [J]
 */
public record LineEnergy(double strain, double weight, double springs, double inlineAbsorbers, double hanging) {
    /**
     * Sum without the loads.
     *
     * @return energy [J]
     */
    public double line() {
        return strain + weight + springs + inlineAbsorbers;
    }
}
