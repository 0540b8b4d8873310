package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.Outcome;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;

/**
 * The line at rest: as installed, at another temperature, under loads that were put on slowly one after the other.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Statics implements Canonical {
    private final @Nullable Double temperature;
    private final ProgressListener listener;

    private Statics(@Nullable Double temperature, ProgressListener listener) {
        this.temperature = temperature;
        this.listener = listener;
    }

    /**
     * Statics at the temperature of installation.
     *
     * @return the analysis
     */
    public static Statics withDefaults() {
        return new Statics(null, ProgressListener.none());
    }

    /**
     * The same at the temperature at which the line was installed.
     *
     * @return the new analysis
     */
    public Statics atInstalledTemperature() {
        return new Statics(null, listener);
    }

    /**
     * The same at a temperature.
     *
     * @param value temperature [°C], above absolute zero and below 1000
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it lies outside
     */
    public Statics withTemperature(double value) {
        return new Statics(PlausibleRange.TEMPERATURE.required("temperature", value), listener);
    }

    /**
     * The same with a listener that hears of the installed line, of the line at its temperature and of each load, and of a long
     * piece of that work again and again; it can end the analysis, which then has no result.
     *
     * @param value the listener
     * @return the new analysis
     */
    public Statics withProgress(ProgressListener value) {
        return new Statics(temperature, Violations.required("progress", value));
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
     * @throws java.util.concurrent.CancellationException if the thread is interrupted, whose flag stays set, or the listener
     *     ended the work
     */
    public LineEquilibrium solve(Lifeline line, List<AppliedLoad> loads) {
        Violations.required("line", line);
        Violations.requiredAll("loads", loads);
        checkPlaces(line, loads);
        WatchedWork work = new WatchedWork(2L + loads.size(), listener);
        LineModel model = new LineModel(line, work);
        work.partDone();
        double t = temperature == null ? line.installed().temperature() : temperature;
        model.bringTo(t);
        work.partDone();
        List<LineEquilibrium.Hung> hung = new ArrayList<>(loads.size());
        for (AppliedLoad each : loads) {
            LineModel.Load load = hook(model, each.place(), each.attachment());
            model.hang(load, each.force());
            work.partDone();
            hung.add(new LineEquilibrium.Hung(load, spanOnCable(each.place()), each.force()));
        }
        return LineEquilibrium.of(model, t, hung);
    }

    /**
     * Where on the installed line a point of its cable hangs. A load that is {@linkplain Attachment#GRIPPED gripped} there
     * holds that very point, whatever the line does later.
     *
     * @param line the line
     * @param length unstretched length of cable between the first end and the point [m], above 0 and below that of the cable
     * @return the place
     * @throws org.lifeline.base.InvalidInputException if the cable does not have the point, or the line cannot hang as stated
     */
    public static Place placeOfCablePoint(Lifeline line, double length) {
        Violations.required("line", line);
        LineModel model = new LineModel(line);
        Optional<LineModel.CablePoint> found = length > 0 ? model.installedPoint(length) : Optional.empty();
        if (found.isEmpty()) {
            double whole = model.installedLength();
            throw new InvalidInputException(List.of(
                    Violation.of("length", GivenValue.number(length, "m"), InputRule.LENGTH_OUTSIDE_CABLE, whole)
                            .allowing(AllowedRange.inside(Interval.of(0, whole)))));
        }
        int span = found.get().span();
        Point from = line.supports().get(span).position();
        return Place.of(span + 1, from.horizontalDistance(found.get().point()));
    }

    /**
     * A line whose supports stand where nobody has pulled at them yet, in the place to which they yield when it is tensioned.
     * A {@link Lifeline} takes positions as installed; where those before are known, this gives the line to go on with.
     *
     * @param line the line with the positions of its supports before anything pulls at them
     * @return the same line with each elastic support moved by what the installed line does to it
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @throws org.lifeline.base.NoEquilibriumException if the supports find no place to rest
     */
    public static Lifeline withYieldedSupports(Lifeline line) {
        Violations.required("line", line);
        return new YieldingSupports(line).yielded();
    }

    /**
     * The way back from {@link #withYieldedSupports}: a line whose supports stand as installed, in the place where they would
     * stand if nothing pulled at them. What is then changed of it, the pretension for example, lets them yield anew.
     *
     * @param line the line with positions as installed
     * @return the same line with each elastic support moved back by what the installed line does to it
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @since 1.0.0
     */
    public static Lifeline withUnloadedSupports(Lifeline line) {
        Violations.required("line", line);
        return new YieldingSupports(line).unloaded();
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
            List<Violation> found = line.check(loads.get(i).place());
            if (!found.isEmpty()) {
                v.addAll(found, "loads[" + i + "].place");
            }
        }
        v.throwIfAny();
    }

    /**
     * The same without throwing: for tables and searches, in which one bad case must not end the others.
     *
     * @param line the line
     * @param loads the loads in the order in which they are put on; none for the line alone
     * @return the result, or what was wrong with the input, or how far the analysis came
     * @throws java.util.concurrent.CancellationException if the thread is interrupted, whose flag stays set, or the listener
     *     ended the work
     */
    public Outcome<LineEquilibrium> attempt(Lifeline line, List<AppliedLoad> loads) {
        return Outcome.of(() -> solve(line, loads));
    }

    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("statics");
        return (temperature == null ? b : b.number("temperature", temperature, "°C")).build();
    }
}
