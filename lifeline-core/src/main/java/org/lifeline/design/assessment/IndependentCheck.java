package org.lifeline.design.assessment;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.model.Fall;
import org.lifeline.verify.VerificationReport;
import org.lifeline.verify.Verifier;

/**
 * The check of an arrest that governs by another way: of an energy balance by the verifier, which shares no formula with the
 * solver, as is the line at rest with a rescuer; of an arrest in time by the account of its energies.
 *
 * <p>Immutable and thread-safe.
 *
 * @param fallCase the case
 * @param method how it was computed
 * @param failures what failed, in words; empty when everything passed
 * @since 1.0.0
 */
public record IndependentCheck(FallCase fallCase, Method method, List<String> failures) {
    /**
     * Copies the list.
     *
     * @param fallCase the case
     * @param method how it was computed
     * @param failures what failed
     */
    public IndependentCheck {
        failures = List.copyOf(failures);
    }

    static IndependentCheck of(FallCase fallCase, ArrestResult arrest) {
        List<String> failures =
                switch (arrest.method()) {
                    case ENERGY_BALANCE -> words(Verifier.withDefaults().arrest(arrest));
                    case RESCUE_AT_REST -> words(Verifier.withDefaults().equilibrium(arrest.peak(), loads(arrest)));
                    case TRANSIENT -> drift(arrest);
                };
        return new IndependentCheck(fallCase, arrest.method(), failures);
    }

    private static List<String> words(VerificationReport report) {
        return report.failures().stream().map(Object::toString).toList();
    }

    /** What hangs on a line at rest, read off the result. */
    private static List<AppliedLoad> loads(ArrestResult rest) {
        List<AppliedLoad> list = new ArrayList<>();
        for (Fall.Hanging each : rest.fall().hanging()) {
            double weight = each.worker().mass() * rest.line().gravity();
            list.add(new AppliedLoad(each.place(), each.worker().attachment(), weight));
        }
        list.add(new AppliedLoad(rest.fall().place(), rest.attachment(), rest.lineLoad()));
        return list;
    }

    private static List<String> drift(ArrestResult arrest) {
        return arrest.motion()
                .filter(m -> !(m.relativeDrift() <= SearchParameters.DRIFT))
                .map(m -> List.of("the energies of the motion drift apart by " + m.relativeDrift()
                        + " of that of the fall (limit " + SearchParameters.DRIFT + ")"))
                .orElse(List.of());
    }

    /**
     * Tells whether everything passed.
     *
     * @return true if nothing failed
     */
    public boolean passed() {
        return failures.isEmpty();
    }
}
