package org.lifeline.verify;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.LoadArrangement;
import org.lifeline.verify.state.StateNumbers;

/**
 * Checks results against the laws that they must obey, without the formulas that they came from.
 *
 * <p>{@code Verifier.withDefaults().arrest(result).passed()}. The installed state that springs, lengths and material
 * points refer to is solved anew and is itself checked against what the design states.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Verifier {
    private final Map<Check, Double> limits;
    private final int pathSolutions;

    private Verifier(Map<Check, Double> limits, int pathSolutions) {
        this.limits = limits;
        this.pathSolutions = pathSolutions;
    }

    /**
     * All checks with their default limits, without the expensive path work.
     *
     * @return the verifier
     */
    public static Verifier withDefaults() {
        return new Verifier(Map.of(), 0);
    }

    /**
     * The same with another limit for one kind of check.
     *
     * @param check the kind
     * @param value limit [unit of the check], not negative
     * @return the new verifier
     * @throws org.lifeline.base.InvalidInputException if the limit is negative or not finite
     */
    public Verifier withLimit(Check check, double value) {
        Violations.required("check", check);
        new Violations().notNegative("limit", value, check.unit()).throwIfAny();
        Map<Check, Double> map = new EnumMap<>(Check.class);
        map.putAll(limits);
        map.put(check, value);
        return new Verifier(map, pathSolutions);
    }

    /**
     * The same with {@link Check#STATIC_PATH_WORK}: the work on the line is integrated through static solutions, for
     * lines without friction.
     *
     * @param solutions most solutions of statics that an arrest may take, above zero
     * @return the new verifier
     * @throws org.lifeline.base.InvalidInputException if the number is not above zero
     */
    public Verifier withPathWork(int solutions) {
        new Violations().positive("solutions", solutions, "").throwIfAny();
        return new Verifier(limits, solutions);
    }

    /**
     * Checks a line at rest.
     *
     * @param state the result
     * @param loads the loads that it was solved for, in their order
     * @return what was found
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public VerificationReport equilibrium(LineEquilibrium state, List<AppliedLoad> loads) {
        Violations.required("state", state);
        Violations.requiredAll("loads", loads);
        StateNumbers numbers = StateNumbers.of(state);
        return report(numbers, loads, installed(numbers));
    }

    /**
     * Checks an arrest: the line before the fall, at the lowest point, and everything between them.
     *
     * @param result the result of an energy balance
     * @return what was found
     * @throws org.lifeline.base.InvalidInputException if the result comes from another method; at the lowest point of a
     *     transient the line is not at rest
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public VerificationReport arrest(ArrestResult result) {
        Violations.required("result", result);
        new Violations()
                .require(
                        result.method() == Method.ENERGY_BALANCE,
                        "result.method",
                        GivenValue.text(result.method().label()),
                        InputRule.ENERGY_BALANCE_NEEDED)
                .throwIfAny();
        ArrestNumbers numbers = ArrestNumbers.of(result);
        return reportArrest(numbers, installed(numbers.peak()));
    }

    private static StateNumbers installed(StateNumbers state) {
        return StateNumbers.of(Statics.withDefaults().solve(state.line(), List.of()));
    }

    VerificationReport report(StateNumbers state, List<AppliedLoad> loads, StateNumbers installed) {
        CheckLog log = new CheckLog(limits);
        CableIntegration integration = CableIntegration.of(state.line().cable());
        checkInstalled(installed, integration, log);
        checkState(new Named("state", state, loads), installed, integration, log);
        AbsorberChecks.check(
                state, AbsorberChecks.History.after(installed, loads.size() <= 1), integration, "state", log);
        return log.report();
    }

    VerificationReport reportArrest(ArrestNumbers arrest, StateNumbers installed) {
        CheckLog log = new CheckLog(limits);
        CableIntegration integration = CableIntegration.of(arrest.peak().line().cable());
        FiniteChecks.check(arrest, log);
        checkInstalled(installed, integration, log);
        checkState(new Named("before", arrest.before(), arrest.hanging()), installed, integration, log);
        checkState(new Named("peak", arrest.peak(), arrest.loadsAtPeak()), installed, integration, log);
        AbsorberChecks.check(
                arrest.before(),
                AbsorberChecks.History.after(installed, arrest.hanging().size() <= 1),
                integration,
                "before",
                log);
        AbsorberChecks.check(
                arrest.peak(),
                AbsorberChecks.History.after(arrest.before(), arrest.hanging().isEmpty()),
                integration,
                "peak",
                log);
        new FallChecks(arrest, installed, integration, log).check();
        new EnergyChecks(arrest, installed, integration, log).check();
        new ClearanceChecks(arrest, log).check();
        if (pathSolutions > 0 && StaticPath.isUnique(arrest)) {
            double work = arrest.energy().lineWork();
            double throughStates = new StaticPath(arrest, pathSolutions).work();
            log.add(Check.STATIC_PATH_WORK, "fall", Math.abs(throughStates - work) / EnergyChecks.workScale(arrest));
        }
        return log.report();
    }

    /** A state with its name and the loads that it was solved for. */
    private record Named(String name, StateNumbers state, List<AppliedLoad> loads) {}

    private static void checkInstalled(StateNumbers installed, CableIntegration integration, CheckLog log) {
        checkState(new Named("installed", installed, List.of()), installed, integration, log);
        InstalledChecks.check(installed, integration, log);
        AbsorberChecks.check(installed, AbsorberChecks.History.fromNew(), integration, "installed", log);
    }

    private static void checkState(Named named, StateNumbers installed, CableIntegration integration, CheckLog log) {
        StateNumbers state = named.state();
        String name = named.name();
        FiniteChecks.check(state, name, log);
        ForceChecks.check(state, name, log);
        ForceChecks.checkLoads(state, named.loads(), name, log);
        ShapeChecks.check(state, installed, integration, name, log);
        LengthChecks.check(state, installed, name, log);
        LoadArrangement arrangement = LoadArrangement.of(state, installed, named.loads());
        PassageChecks.check(state, arrangement, name, log);
        new AttachmentChecks(state, installed, integration, name, log).check(arrangement);
    }
}
