package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.internal.numeric.Extrapolation;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.model.Place;
import org.lifeline.model.Support;

/**
 * The influence lines of one span: how each quantity varies with the place of a moving fall, for one combination of the ranges; sampled first, then refined where
 * a worse value may hide.
 *
 * <p>Between two samples a quantity is taken to lie below the lines through the neighbouring samples, as a concave curve
 * does, and below parabolas where it rises the steeper the farther, toward a kink ({@link Extrapolation}): the bound is where
 * the two meet. The interval with the largest bound is sampled at that place until no bound exceeds the worst value known by
 * more than the tolerance, or the interval is shorter than a millimetre. A quantity that is absent on one side of an interval
 * (an obstruction that begins or ends, a case that failed) is followed to the edge by halving. Falls at the supports of the
 * span are cases of their own, beside the curve. Not thread-safe; one thread at a time works on a curve.
 */
final class InfluenceLine {
    private final MovingFall movingFall;
    private final int span;
    private final LoadCombination combination;
    private final ArrestQuantities quantities;
    private final List<Sample> samples = new ArrayList<>();
    private final Worst[] worst;
    private final List<FailedCase> failures = new ArrayList<>();
    private final Extrapolation left = new Extrapolation();
    private final Extrapolation right = new Extrapolation();
    private final OneQuantity quantity = new OneQuantity();
    private boolean atSupports;

    InfluenceLine(MovingFall movingFall, int span, LoadCombination combination, ArrestQuantities quantities) {
        this.movingFall = movingFall;
        this.span = span;
        this.combination = combination;
        this.quantities = quantities;
        this.worst = new Worst[quantities.size()];
    }

    /** A sample; no row where the case failed. */
    static final class Sample {
        private final double station;
        private final double @Nullable [] row;

        Sample(double station, double @Nullable [] row) {
            this.station = station;
            this.row = row;
        }

        double value(int index) {
            return row == null ? Double.NaN : row[index];
        }
    }

    /** The samples of one quantity. */
    private final class OneQuantity implements Extrapolation.Samples {
        private int index;

        @Override
        public int count() {
            return samples.size();
        }

        @Override
        public double place(int i) {
            return samples.get(i).station;
        }

        @Override
        public double value(int i) {
            return samples.get(i).value(index);
        }
    }

    /** The worst value of a quantity so far, larger is worse. */
    record Worst(double value, double tolerance, FallCase fallCase, ArrestResult arrest) {}

    int span() {
        return span;
    }

    @Nullable
    Worst worst(int index) {
        return worst[index];
    }

    List<FailedCase> failures() {
        return failures;
    }

    int evaluations() {
        return samples.size();
    }

    /** Takes samples at stations that have none yet. */
    void scan(double[] stations) {
        scanSupports();
        for (double s : stations) {
            int at = find(s);
            if (at == samples.size() || samples.get(at).station != s) {
                samples.add(at, sample(s));
            }
        }
    }

    /** Takes falls at stations that are no part of the curve. */
    void lookAt(double[] stations) {
        for (double s : stations) {
            evaluate(caseAt(s));
        }
    }

    /** Number of the first sample that does not lie before a station. */
    private int find(double station) {
        int low = 0;
        int high = samples.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (samples.get(middle).station < station) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** What was found at some places of a span; a sample without a row where none was taken. */
    record Found(MovingFall movingFall, LoadCombination combination, List<Place> places, List<Sample> samples) {
        /** Value of a quantity at a place; NaN where there is none. */
        double value(int place, int index) {
            return samples.get(place).value(index);
        }

        FallCase caseAt(int place) {
            return combination.at(movingFall, places.get(place));
        }
    }

    /** What was found at places of this span. */
    Found found(List<Place> places) {
        List<Sample> list = new ArrayList<>(places.size());
        for (Place each : places) {
            int at = find(each.station());
            list.add(
                    at < samples.size() && samples.get(at).station == each.station()
                            ? samples.get(at)
                            : new Sample(each.station(), null));
        }
        return new Found(movingFall, combination, places, list);
    }

    /** Tells whether a sample is worse than a threshold by more than half the tolerance. */
    boolean exceeds(int index, double threshold) {
        Worst w = worst[index];
        return w != null && w.value > threshold + EnvelopeTolerances.PROBE_SHARE * w.tolerance;
    }

    FallCase caseAt(double station) {
        return combination.at(movingFall, Place.of(span, station));
    }

    private Sample sample(double station) {
        return new Sample(station, evaluate(caseAt(station)));
    }

    /** Takes the falls at the supports of the span, once: the first one, and behind the last span the last one. */
    private void scanSupports() {
        boolean others = combination.limit() == AttachmentLimit.RUNNING;
        if (atSupports || !others) {
            return;
        }
        atSupports = true;
        List<Support> supports = combination.line().supports();
        evaluate(combination.at(
                movingFall, Place.atSupport(supports.get(span - 1).id())));
        if (span == supports.size() - 1) {
            evaluate(combination.at(
                    movingFall, Place.atSupport(supports.get(span).id())));
        }
    }

    /** Solves a case and keeps what is worst; no row where it failed. */
    private double @Nullable [] evaluate(FallCase fallCase) {
        OrderedWork.stopIfInterrupted();
        ArrestResult arrest;
        double[] row;
        try {
            arrest = combination.solve(fallCase);
            row = quantities.of(arrest);
        } catch (InvalidInputException | NoEquilibriumException e) {
            failures.add(new FailedCase(fallCase, e));
            return null;
        }
        for (int i = 0; i < row.length; i++) {
            Worst w = worst[i];
            if (!Double.isNaN(row[i]) && (w == null || EnvelopeTolerances.isWorse(row[i], w.value))) {
                worst[i] = new Worst(row[i], quantities.tolerance(i, row), fallCase, arrest);
            }
        }
        return row;
    }

    /** Samples until nothing worse than what is known can hide. */
    void refine(int index, double threshold) {
        for (int n = 0; n < EnvelopeTolerances.MOST_SAMPLES; n++) {
            Worst w = worst[index];
            double known = Math.max(threshold, w == null ? Double.NEGATIVE_INFINITY : w.value);
            int at = -1;
            double most = known + tolerance(index);
            for (int i = 0; i + 1 < samples.size(); i++) {
                boolean wide = width(i) > EnvelopeTolerances.FINEST;
                double b = wide ? bound(i, index) : Double.NEGATIVE_INFINITY;
                if (b > most) {
                    most = b;
                    at = i;
                }
            }
            if (at < 0) {
                return;
            }
            samples.add(at + 1, sample(place(at, index)));
        }
    }

    private double tolerance(int index) {
        Worst w = worst[index];
        return w == null ? 0 : w.tolerance;
    }

    /** The largest value that an interval may hold. */
    private double bound(int i, int index) {
        double a = samples.get(i).value(index);
        double b = samples.get(i + 1).value(index);
        if (Double.isNaN(a) && Double.isNaN(b)) {
            return Double.NEGATIVE_INFINITY;
        }
        double width = width(i);
        foresee(i, index);
        if (Double.isNaN(b)) {
            return edge(a, left, width);
        }
        if (Double.isNaN(a)) {
            return edge(b, right, width);
        }
        double most = Math.max(a, b);
        if (left.isUnknown() || right.isUnknown()) {
            double out = left.isUnknown() ? right.at(width) : left.at(width);
            return Double.isNaN(out) ? most : Math.max(most, out);
        }
        double x = left.meeting(right, width);
        return Double.isNaN(x) ? most : Math.max(most, left.at(x));
    }

    private static double edge(double value, Extrapolation there, double width) {
        return there.isUnknown() ? Double.POSITIVE_INFINITY : Math.max(value, there.at(width));
    }

    /** Fills in how a quantity goes on into an interval from both sides. */
    private void foresee(int i, int index) {
        quantity.index = index;
        left.beyond(quantity, i, -1);
        right.beyond(quantity, i + 1, 1);
    }

    private double width(int i) {
        return samples.get(i + 1).station - samples.get(i).station;
    }

    private double place(int i, int index) {
        double start = samples.get(i).station;
        double width = width(i);
        foresee(i, index);
        double x = left.meeting(right, width);
        double margin = EnvelopeTolerances.INTERVAL_MARGIN * width;
        return start + (Double.isNaN(x) ? 0.5 * width : Math.min(width - margin, Math.max(margin, x)));
    }
}
