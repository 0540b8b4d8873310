package org.lifeline.verify;

import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Everything that was checked on one result.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
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
     * @return true if nothing failed and everything could be checked
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
        return results.stream().filter(r -> r.checkable() && !r.passed()).toList();
    }

    /**
     * What could not be checked: rounding leaves more open than a check may allow, because magnitudes lie too far apart.
     *
     * @return the results in the order of checking; unmodifiable
     */
    public List<CheckResult> notCheckable() {
        return results.stream().filter(r -> !r.checkable()).toList();
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
     * The report as text: failures, what could not be checked, then the worst of each kind.
     *
     * @return the lines; unmodifiable
     */
    public List<String> lines() {
        List<CheckResult> failures = failures();
        List<CheckResult> open = notCheckable();
        String head = results.size() + " checks, " + failures.size() + " failed"
                + (open.isEmpty() ? "" : ", " + open.size() + " not checkable");
        Stream<String> lines = Stream.of(failures, open, worst.values())
                .flatMap(Collection::stream)
                .distinct()
                .map(CheckResult::toString);
        return Stream.concat(Stream.of(head), lines).toList();
    }

    @Override
    public String toString() {
        return String.join("\n", lines());
    }
}
