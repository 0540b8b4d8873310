package org.lifeline.design.assessment;

import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.verify.Verifier;

/**
 * The check of an arrest that governs by another way: of an energy balance by the verifier, which shares no formula with the
 * solver; of an arrest in time by the account of its energies.
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
        List<String> failures = arrest.method() == Method.ENERGY_BALANCE
                ? Verifier.withDefaults().arrest(arrest).failures().stream()
                        .map(Object::toString)
                        .toList()
                : arrest.motion()
                        .filter(m -> !(m.relativeDrift() <= SearchParameters.DRIFT))
                        .map(m -> List.of("the energies of the motion drift apart by " + m.relativeDrift()
                                + " of that of the fall (limit " + SearchParameters.DRIFT + ")"))
                        .orElse(List.of());
        return new IndependentCheck(fallCase, arrest.method(), failures);
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
