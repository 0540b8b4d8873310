package org.lifeline.verify;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.verify.state.StateNumbers;

/** A state at rest with what it was solved for. */
record Solved(StateNumbers state, List<AppliedLoad> loads, StateNumbers installed) {
    private static final Verifier VERIFIER = Verifier.withDefaults();

    /** At 30 °C, fifteen above what the lines of the cases are installed at. */
    static Solved of(Lifeline line, AppliedLoad... loads) {
        List<AppliedLoad> list = List.of(loads);
        return new Solved(
                StateNumbers.of(Statics.withDefaults().withTemperature(30).solve(line, list)),
                list,
                StateNumbers.of(Statics.withDefaults().solve(line, List.of())));
    }

    Set<Check> failed(StateNumbers changed) {
        return failures(changed, loads, installed);
    }

    static Set<Check> failures(StateNumbers state, List<AppliedLoad> loads, StateNumbers installed) {
        return failures(VERIFIER.report(state, loads, installed));
    }

    static Set<Check> failures(VerificationReport report) {
        return report.failures().stream()
                .map(CheckResult::check)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Check.class)));
    }

    static AppliedLoad gripped(int span, double station, double force) {
        return new AppliedLoad(Place.of(span, station), Attachment.GRIPPED, force);
    }

    static AppliedLoad free(int span, double station, double force) {
        return new AppliedLoad(Place.of(span, station), Attachment.FREE_RUNNING, force);
    }
}
