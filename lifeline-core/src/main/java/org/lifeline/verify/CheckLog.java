package org.lifeline.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;

/**
 * Collects what the checks find; every check passes here, so that an interrupt of the thread ends them here. Not thread-safe;
 * made and read within one call.
 */
final class CheckLog {
    private final Map<Check, Double> limits;
    private final List<CheckResult> results = new ArrayList<>();

    CheckLog(Map<Check, Double> limits) {
        this.limits = limits;
    }

    /** Adds a result; the value is an error, 0 when perfect. */
    void add(Check check, String where, double value) {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("interrupted");
        }
        results.add(new CheckResult(check, where, value, limit(check)));
    }

    /**
     * Adds that something cannot be checked, because rounding leaves more open than a check may allow.
     *
     * @param open what rounding leaves open [unit of the check]
     */
    void addNotCheckable(Check check, String where, double open) {
        results.add(new CheckResult(check, where, open, CheckTolerances.LARGEST_ALLOWANCE, false));
    }

    double limit(Check check) {
        return limits.getOrDefault(check, check.defaultLimit());
    }

    VerificationReport report() {
        return new VerificationReport(results);
    }
}
