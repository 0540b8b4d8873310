package org.lifeline.file.result;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.verify.CheckResult;
import org.lifeline.verify.VerificationReport;
import org.lifeline.verify.Verifier;

/**
 * What the independent check says of the arrests of a design. Only arrests by energy balance are checked: at the lowest
 * point of a motion the line is not at rest.
 *
 * <p>Immutable and thread-safe.
 */
public final class IndependentCheck {
    private final List<Optional<VerificationReport>> reports;

    private IndependentCheck(List<Optional<VerificationReport>> reports) {
        this.reports = List.copyOf(reports);
    }

    /**
     * Checks arrests.
     *
     * @param arrests the arrests
     * @return what came out
     */
    public static IndependentCheck of(List<ArrestResult> arrests) {
        List<Optional<VerificationReport>> list = new ArrayList<>();
        for (ArrestResult r : arrests) {
            list.add(
                    r.method() == Method.ENERGY_BALANCE
                            ? Optional.of(Verifier.withDefaults().arrest(r))
                            : Optional.empty());
        }
        return new IndependentCheck(list);
    }

    /**
     * What was found of each arrest.
     *
     * @return one for each arrest, empty for one in time; unmodifiable
     */
    public List<Optional<VerificationReport>> reports() {
        return reports;
    }

    /**
     * Tells whether no check failed.
     *
     * @return true if nothing failed; what is not checkable is no failure
     */
    public boolean passed() {
        return reports.stream().allMatch(r -> r.isEmpty() || r.get().failures().isEmpty());
    }

    /**
     * The flag of an arrest in the result file.
     *
     * @param arrest number of the arrest, from 0
     * @return {@code "passed"}, {@code "failed"} or {@code "not checkable"}; empty for one that is not checked
     */
    public Optional<String> flag(int arrest) {
        return reports.get(arrest)
                .map(r -> !r.failures().isEmpty() ? "failed" : r.notCheckable().isEmpty() ? "passed" : "not checkable");
    }

    /**
     * What failed, and what could not be checked, as sentences.
     *
     * @return one line for each; empty if everything passed; unmodifiable
     */
    public List<String> lines() {
        return lines(true);
    }

    /**
     * What failed, as sentences.
     *
     * @return one line for each; empty if nothing failed; unmodifiable
     */
    public List<String> failedLines() {
        return lines(false);
    }

    private List<String> lines(boolean notCheckableToo) {
        List<String> list = new ArrayList<>();
        for (int i = 0; i < reports.size(); i++) {
            String name = "arrest " + (i + 1) + ": ";
            reports.get(i).ifPresent(r -> {
                for (CheckResult each : r.failures()) {
                    list.add(name + each);
                }
                if (notCheckableToo) {
                    for (CheckResult each : r.notCheckable()) {
                        list.add(name + each);
                    }
                }
            });
        }
        return List.copyOf(list);
    }
}
