package org.lifeline.analysis;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.base.Point;
import org.lifeline.model.Worker;

/** Collects what an analysis has found. Not thread-safe. */
final class ArrestResultBuilder {
    final ArrestResult.Conditions conditions;

    @Nullable
    LineEquilibrium before;

    @Nullable
    LineEquilibrium peak;

    @Nullable
    Point attachmentBefore;

    @Nullable
    Point attachmentAtPeak;

    double freeFall = Double.NaN;
    List<Double> deployments = List.of();
    boolean bound;
    double arrestForce = Double.NaN;
    double lineLoad = Double.NaN;
    boolean bottomedOut;

    @Nullable
    EnergyAccount energy;

    double pathWork = Double.NaN;

    @Nullable
    Clearance clearance;

    double harnessStretch;
    Optional<MotionSummary> motion = Optional.empty();
    Worker hardestArrested;
    Worker clearanceWorker;

    ArrestResultBuilder(ArrestResult.Conditions conditions) {
        this.conditions = conditions;
        hardestArrested = conditions.fall().fallers().get(0);
        clearanceWorker = hardestArrested;
    }

    ArrestResultBuilder hardestArrested(Worker value) {
        hardestArrested = value;
        return this;
    }

    ArrestResultBuilder clearanceWorker(Worker value) {
        clearanceWorker = value;
        return this;
    }

    ArrestResultBuilder before(LineEquilibrium value) {
        before = value;
        return this;
    }

    ArrestResultBuilder peak(LineEquilibrium value) {
        peak = value;
        return this;
    }

    ArrestResultBuilder attachmentBefore(Point value) {
        attachmentBefore = value;
        return this;
    }

    ArrestResultBuilder attachmentAtPeak(Point value) {
        attachmentAtPeak = value;
        return this;
    }

    ArrestResultBuilder freeFall(double value) {
        freeFall = value;
        return this;
    }

    ArrestResultBuilder deployments(List<Double> value) {
        deployments = value;
        return this;
    }

    ArrestResultBuilder bound(boolean value) {
        bound = value;
        return this;
    }

    ArrestResultBuilder arrestForce(double value) {
        arrestForce = value;
        return this;
    }

    ArrestResultBuilder lineLoad(double value) {
        lineLoad = value;
        return this;
    }

    ArrestResultBuilder bottomedOut(boolean value) {
        bottomedOut = value;
        return this;
    }

    ArrestResultBuilder energy(EnergyAccount value) {
        energy = value;
        return this;
    }

    ArrestResultBuilder pathWork(double value) {
        pathWork = value;
        return this;
    }

    ArrestResultBuilder clearance(Clearance value) {
        clearance = value;
        return this;
    }

    ArrestResultBuilder harnessStretch(double value) {
        harnessStretch = value;
        return this;
    }

    ArrestResultBuilder motion(MotionSummary value) {
        motion = Optional.of(value);
        return this;
    }

    ArrestResult build() {
        return new ArrestResult(this);
    }
}
