package org.lifeline.design.envelope;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.PeakAllowances;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Direction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * The numbers that are read off every arrest, in one row: the quantities, the margin above each obstruction, force and
 * components on each support. All are turned so that larger is worse; NaN where an arrest has none. Model factors are in,
 * and so is what the mesh of an arrest in time may hide, where it is known.
 */
final class ArrestQuantities {
    private static final List<Quantity> QUANTITIES = List.of(Quantity.values());
    private static final List<Direction> DIRECTIONS = List.of(Direction.values());
    private static final int PER_SUPPORT = 1 + DIRECTIONS.size();

    private final List<Obstruction> obstructions;
    private final ModelFactors factors;
    private final ForceFilter filter;
    private final int supports;

    private ArrestQuantities(LifelineDesign design, ModelFactors factors, ForceFilter filter) {
        this.obstructions = design.clearance().obstructions();
        this.factors = factors;
        this.filter = filter;
        this.supports = design.line().supports().size();
    }

    /** With the model factors of the design. */
    static ArrestQuantities of(LifelineDesign design, ForceFilter filter) {
        return new ArrestQuantities(design, design.modelFactors(), filter);
    }

    /** Without model factors. */
    static ArrestQuantities withoutFactors(LifelineDesign design, ForceFilter filter) {
        return new ArrestQuantities(design, ModelFactors.none(), filter);
    }

    /** How forces in time are read. */
    ForceFilter filter() {
        return filter;
    }

    /** Tells whether an arrest is in time and nothing is known of what its mesh hides. */
    static boolean isUnbounded(ArrestResult arrest) {
        return arrest.motion().isPresent()
                && !arrest.motion().get().allowances().known();
    }

    int size() {
        return QUANTITIES.size() + obstructions.size() + supports * PER_SUPPORT;
    }

    static int index(Quantity quantity) {
        return QUANTITIES.indexOf(quantity);
    }

    int indexOfObstruction(int number) {
        return QUANTITIES.size() + number;
    }

    int indexOfSupport(int number) {
        return QUANTITIES.size() + obstructions.size() + number * PER_SUPPORT;
    }

    int indexOfSupport(int number, Direction direction) {
        return indexOfSupport(number) + 1 + DIRECTIONS.indexOf(direction);
    }

    /** Tells whether the worst value is also wanted for each span. */
    boolean isPerSpan(int index) {
        return index < QUANTITIES.size() + obstructions.size();
    }

    /** Tells whether a search along the line is worth while: the least margin follows from those above each obstruction. */
    boolean isSearched(int index) {
        return index != index(Quantity.CLEARANCE_MARGIN);
    }

    /** 1 where the largest value is the worst, −1 where the smallest is. */
    int sign(int index) {
        if (index < QUANTITIES.size()) {
            return QUANTITIES.get(index).largestIsWorst() ? 1 : -1;
        }
        return index < QUANTITIES.size() + obstructions.size() ? -1 : 1;
    }

    /** The side of the force range that governs where both give the same value: the one that the quantity is meant for. */
    DeploymentForce sideOfTie(int index) {
        boolean force = index < QUANTITIES.size()
                ? QUANTITIES.get(index).isForce()
                : index >= QUANTITIES.size() + obstructions.size();
        return force ? DeploymentForce.MAXIMUM : DeploymentForce.CLEARANCE;
    }

    /** The row of an arrest, with what its mesh may hide. */
    double[] of(ArrestResult arrest) {
        double[] row = computed(arrest);
        Optional<MotionSummary> motion =
                arrest.motion().filter(m -> m.allowances().known());
        if (motion.isPresent()) {
            lengths(motion.get().allowances(), row);
            forces(new ForcesInTime(arrest, motion.get(), filter), row, 1);
        }
        return row;
    }

    /** The row of an arrest as computed. */
    double[] computed(ArrestResult arrest) {
        double[] row = new double[size()];
        for (int i = 0; i < QUANTITIES.size(); i++) {
            row[i] = sign(i) * QUANTITIES.get(i).value(arrest, factors);
        }
        margins(arrest, row);
        for (int i = 0; i < supports; i++) {
            Vector3 v = onSupport(arrest, i);
            int at = indexOfSupport(i);
            for (int part = 0; part < PER_SUPPORT; part++) {
                row[at + part] = part(v, part);
            }
        }
        if (filter != ForceFilter.NONE && arrest.motion().isPresent()) {
            forces(new ForcesInTime(arrest, arrest.motion().get(), filter), row, 0);
        }
        return row;
    }

    private Vector3 onSupport(ArrestResult arrest, int number) {
        return arrest.supports().get(number).vector().times(factors.force());
    }

    /** The force itself, then its components. */
    private static double part(Vector3 force, int part) {
        return part == 0 ? force.magnitude() : DIRECTIONS.get(part - 1).component(force);
    }

    /** Adds what the mesh may hide of lengths; the clearance is lost where the lowest point is lower. */
    private void lengths(PeakAllowances hidden, double[] row) {
        double lower = hidden.lowest();
        double longer = Math.max(lower, hidden.extensions().connection());
        for (int i = 0; i < QUANTITIES.size(); i++) {
            row[i] += factors.distance()
                    * switch (QUANTITIES.get(i)) {
                        case DEPLOYMENT -> longer;
                        case SAG, LINE_DESCENT -> longer;
                        case INLINE_EXTENSION -> hidden.extensions().inline();
                        case TOTAL_FALL_DISTANCE,
                                REQUIRED_BELOW_LINE,
                                REQUIRED_BELOW_WALKING_LEVEL,
                                REQUIRED_ELEVATION,
                                CLEARANCE_MARGIN -> lower;
                        default -> 0;
                    };
        }
        for (int k = 0; k < obstructions.size(); k++) {
            row[indexOfObstruction(k)] += factors.distance() * lower;
        }
    }

    /** Puts forces in time into a row, with a part of what the mesh may hide of them. */
    private void forces(ForcesInTime f, double[] row, double part) {
        double factor = factors.force();
        int last = supports - 1;
        double ends = Math.max(f.support(0, part), f.support(last, part));
        double posts = Double.NaN;
        for (int i = 0; i < supports; i++) {
            double force = f.support(i, part);
            if (i > 0 && i < last) {
                posts = Double.isNaN(posts) ? force : Math.max(posts, force);
            }
            int at = indexOfSupport(i);
            // The direction is that of the force as it is; each component may grow by what the whole may.
            double scale = row[at] > 0 ? factor * f.support(i, 0) / row[at] : 1;
            for (int d = 0; d < DIRECTIONS.size(); d++) {
                row[at + 1 + d] = scale * row[at + 1 + d] + factor * part * f.hiddenOfSupport(i);
            }
            row[at] = factor * force;
        }
        row[index(Quantity.END_ANCHOR_LOAD)] = factor * ends;
        row[index(Quantity.INTERMEDIATE_ANCHOR_LOAD)] = factor * posts;
        row[index(Quantity.SUPPORT_LOAD)] = factor * (Double.isNaN(posts) ? ends : Math.max(ends, posts));
        row[index(Quantity.MAXIMUM_TENSION)] = factor * f.tension(part);
        row[index(Quantity.ARREST_FORCE)] = factor * f.arrestForce(part);
        row[index(Quantity.LINE_LOAD)] += factor * part * f.hiddenOfLineLoad();
    }

    /**
     * Reads values off arrests, whose rows are as long as the line. A load by energy balance is read by itself, since every
     * support may have an arrest of its own; the row of the last arrest that was read is kept. Thread-safe.
     */
    static final class Reader {
        private final ArrestQuantities quantities;
        private volatile @Nullable Row last;

        Reader(ArrestQuantities quantities) {
            this.quantities = quantities;
        }

        /** A value of an arrest. */
        Value read(ArrestResult arrest, int index) {
            int ofSupports = index - quantities.indexOfSupport(0);
            if (ofSupports >= 0 && arrest.motion().isEmpty()) {
                Vector3 force = quantities.onSupport(arrest, ofSupports / PER_SUPPORT);
                return new Value(part(force, ofSupports % PER_SUPPORT), 0);
            }
            Row row = last;
            if (row == null || row.arrest != arrest) {
                row = new Row(arrest, quantities);
                last = row;
            }
            return new Value(row.computed[index], Math.max(0, row.withHidden[index] - row.computed[index]));
        }
    }

    /** A value as computed, and what the mesh may hide of it, not negative. */
    record Value(double computed, double hidden) {}

    /** The values of one arrest, as computed and with what its mesh may hide. */
    private static final class Row {
        private final ArrestResult arrest;
        private final double[] computed;
        private final double[] withHidden;

        Row(ArrestResult arrest, ArrestQuantities quantities) {
            this.arrest = arrest;
            this.computed = quantities.computed(arrest);
            this.withHidden = arrest.motion().isPresent() ? quantities.of(arrest) : computed;
        }
    }

    /**
     * The forces of an arrest in time, as they are or behind a filter, and what the mesh may hide of them. Behind the filter
     * they are those of the whole run that was followed.
     */
    private record ForcesInTime(ArrestResult arrest, MotionSummary motion, ForceFilter filter) {
        private boolean filtered() {
            return filter != ForceFilter.NONE;
        }

        private double hidden(PeakAllowances.Force force) {
            return filtered() ? force.filteredForce() : force.force();
        }

        double hiddenOfSupport(int i) {
            return hidden(motion.allowances().support(arrest.supports().get(i).id()));
        }

        double support(int i, double part) {
            SupportReaction reaction = arrest.supports().get(i);
            double force = filtered() ? motion.wholeRun().support(reaction.id()).filteredForce() : reaction.force();
            return part == 0 ? force : force + part * hiddenOfSupport(i);
        }

        double tension(double part) {
            double force = filtered() ? motion.wholeRun().filteredTension() : arrest.maximumTension();
            return part == 0 ? force : force + part * hidden(motion.allowances().tension());
        }

        double arrestForce(double part) {
            double force = filtered()
                    ? arrest.fall().fallers().stream()
                            .mapToDouble(w -> motion.wholeRun().worker(w.id()).filteredForce())
                            .max()
                            .orElseThrow()
                    : arrest.arrestForce();
            return part == 0 ? force : force + part * hidden(motion.allowances().arrestForce());
        }

        /** The sum over all who fall, each with the allowance of one. */
        double hiddenOfLineLoad() {
            return arrest.fall().fallers().size()
                    * motion.allowances().arrestForce().force();
        }
    }

    private void margins(ArrestResult arrest, double[] row) {
        if (obstructions.isEmpty()) {
            return;
        }
        double here = arrest.line().along(arrest.fall().place());
        Point first = arrest.line().supports().get(arrest.span() - 1).position();
        double there = here
                - arrest.line().stationOf(arrest.fall().place())
                + first.horizontalDistance(arrest.attachmentAtPeak());
        double required = Quantity.REQUIRED_ELEVATION.value(arrest, factors);
        for (int k = 0; k < obstructions.size(); k++) {
            Obstruction o = obstructions.get(k);
            boolean below =
                    o.standsBetween(here, there) && o.isUnder(arrest.fall().largestOffset());
            row[indexOfObstruction(k)] = below ? o.elevation() - required : Double.NaN;
        }
    }

    /** Gain that is too small to be looked for, at a row. */
    double tolerance(int index, double[] row) {
        if (index < QUANTITIES.size()) {
            Quantity q = QUANTITIES.get(index);
            return q.largestIsWorst()
                    ? EnvelopeTolerances.gain(q.unit(), row[index])
                    : EnvelopeTolerances.ELEVATION_GAIN;
        }
        if (index < QUANTITIES.size() + obstructions.size()) {
            return EnvelopeTolerances.ELEVATION_GAIN;
        }
        int support = (index - QUANTITIES.size() - obstructions.size()) / PER_SUPPORT;
        return EnvelopeTolerances.gain("N", row[indexOfSupport(support)]);
    }
}
