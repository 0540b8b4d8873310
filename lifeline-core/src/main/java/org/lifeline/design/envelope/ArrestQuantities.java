package org.lifeline.design.envelope;

import java.util.List;
import org.lifeline.analysis.ArrestResult;
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
 * components on each support. All are turned so that larger is worse; NaN where an arrest has none. Model factors are in.
 */
final class ArrestQuantities {
    private static final List<Quantity> QUANTITIES = List.of(Quantity.values());
    private static final List<Direction> DIRECTIONS = List.of(Direction.values());
    private static final int PER_SUPPORT = 1 + DIRECTIONS.size();

    private final List<Obstruction> obstructions;
    private final ModelFactors factors;
    private final int supports;

    private ArrestQuantities(LifelineDesign design, ModelFactors factors) {
        this.obstructions = design.clearance().obstructions();
        this.factors = factors;
        this.supports = design.line().supports().size();
    }

    /** With the model factors of the design. */
    static ArrestQuantities of(LifelineDesign design) {
        return new ArrestQuantities(design, design.modelFactors());
    }

    /** As computed. */
    static ArrestQuantities withoutFactors(LifelineDesign design) {
        return new ArrestQuantities(design, ModelFactors.none());
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

    /** The row of an arrest. */
    double[] of(ArrestResult arrest) {
        double[] row = new double[size()];
        for (int i = 0; i < QUANTITIES.size(); i++) {
            row[i] = sign(i) * QUANTITIES.get(i).value(arrest, factors);
        }
        margins(arrest, row);
        List<SupportReaction> reactions = arrest.supports();
        for (int i = 0; i < supports; i++) {
            Vector3 v = reactions.get(i).vector().times(factors.force());
            int at = indexOfSupport(i);
            row[at] = v.magnitude();
            for (int d = 0; d < DIRECTIONS.size(); d++) {
                row[at + 1 + d] = DIRECTIONS.get(d).component(v);
            }
        }
        return row;
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
            boolean below = o.from() <= Math.max(here, there)
                    && o.to() >= Math.min(here, there)
                    && o.isUnder(arrest.fall().largestOffset());
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
