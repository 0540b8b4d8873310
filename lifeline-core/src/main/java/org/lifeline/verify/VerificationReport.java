package org.lifeline.verify;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Everything that was checked on one result.
 *
 * <p>Immutable and thread-safe.
 */
public final class VerificationReport {
    private final List<CheckResult> results;
    private final Map<Check, CheckResult> worst;

    VerificationReport(List<CheckResult> results) {
        this.results = List.copyOf(results);
        Map<Check, CheckResult> map = new EnumMap<>(Check.class);
        for (CheckResult each : results) {
            map.merge(each.check(), each, (a, b) -> b.severity() > a.severity() ? b : a);
        }
        this.worst = Collections.unmodifiableMap(map);
    }

    /**
     * Everything that was checked.
     *
     * @return the results in the order of checking; unmodifiable
     */
    public List<CheckResult> results() {
        return results;
    }

    /**
     * Tells whether every check passed.
     *
     * @return true if nothing failed
     */
    public boolean passed() {
        return worst.values().stream().allMatch(CheckResult::passed);
    }

    /**
     * The checks that failed.
     *
     * @return the failures in the order of checking; unmodifiable
     */
    public List<CheckResult> failures() {
        return results.stream().filter(r -> !r.passed()).toList();
    }

    /**
     * The worst result of each kind of check that was made.
     *
     * @return the result that comes closest to its limit, or exceeds it most, by kind; unmodifiable
     */
    public Map<Check, CheckResult> worst() {
        return worst;
    }

    /**
     * The report as text: failures, then the worst of each kind.
     *
     * @return the lines; unmodifiable
     */
    public List<String> lines() {
        List<CheckResult> failures = failures();
        String head = results.size() + " checks, " + failures.size() + " failed";
        return Stream.concat(
                        Stream.of(head),
                        Stream.concat(failures.stream(), worst.values().stream())
                                .distinct()
                                .map(CheckResult::toString))
                .toList();
    }

    @Override
    public String toString() {
        return String.join("\n", lines());
    }
}
