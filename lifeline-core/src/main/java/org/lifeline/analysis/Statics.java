package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;

/**
 * The line at rest: as installed, at another temperature, under loads that were put on slowly one after the other.
 *
 * <p>Immutable and thread-safe.
 */
public final class Statics implements Canonical {
    private final @Nullable Double temperature;

    private Statics(@Nullable Double temperature) {
        this.temperature = temperature;
    }

    /**
     * Statics at the temperature of installation.
     *
     * @return the analysis
     */
    public static Statics withDefaults() {
        return new Statics(null);
    }

    /**
     * The same at the temperature at which the line was installed.
     *
     * @return the new analysis
     */
    public Statics atInstalledTemperature() {
        return new Statics(null);
    }

    /**
     * The same at a temperature.
     *
     * @param value temperature [°C], above absolute zero and below 1000
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it lies outside
     */
    public Statics withTemperature(double value) {
        return new Statics(PlausibleRange.TEMPERATURE.required("temperature", value));
    }

    /**
     * The line at rest under loads.
     *
     * @param line the line
     * @param loads the loads in the order in which they are put on; none for the line alone
     * @return the equilibrium
     * @throws org.lifeline.base.InvalidInputException if a load does not lie on the line, or the line cannot hang as
     *     stated
     * @throws org.lifeline.base.NoEquilibriumException if none was found
     */
    public LineEquilibrium solve(Lifeline line, List<AppliedLoad> loads) {
        checkPlaces(line, loads);
        LineModel model = new LineModel(line);
        double t = temperature == null ? line.installed().temperature() : temperature;
        model.bringTo(t);
        List<LineEquilibrium.Hung> hung = new ArrayList<>(loads.size());
        for (AppliedLoad each : loads) {
            LineModel.Load load = hook(model, each.place(), each.attachment());
            model.hang(load, each.force());
            hung.add(new LineEquilibrium.Hung(load, spanOnCable(each.place()), each.force()));
        }
        return LineEquilibrium.of(model, t, hung);
    }

    /** Hooks a load on to the line where it is to hang. */
    static LineModel.Load hook(LineModel model, Place place, Attachment attachment) {
        return place.isAtSupport()
                ? model.hookAtSupport(model.line().supportOf(place))
                : model.hook(place.span() - 1, place.station(), attachment == Attachment.GRIPPED);
    }

    /** Number of the span whose cable carries a load at a place, from 1; 0 for a place at a support. */
    static int spanOnCable(Place place) {
        return place.isAtSupport() ? 0 : place.span();
    }

    private static void checkPlaces(Lifeline line, List<AppliedLoad> loads) {
        Violations v = new Violations();
        for (int i = 0; i < loads.size(); i++) {
            v.addAll(line.check(loads.get(i).place()), "loads[" + i + "].place");
        }
        v.throwIfAny();
    }

    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("statics");
        return (temperature == null ? b : b.number("temperature", temperature, "°C")).build();
    }
}
