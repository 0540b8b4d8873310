package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * A design as it stands: each of its falls at each temperature in service with both deployment forces. A design without
 * falls has its worst places looked for, per worker and span and over the line, each worker falling alone; the falls at these places are
 * then computed like stated ones.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class DesignAnalysis implements WorstCases {
    /** What a worst place is looked for in every span; everything else over the whole line. */
    private static final List<Quantity> IN_EVERY_SPAN = List.of(
            Quantity.END_ANCHOR_LOAD,
            Quantity.SUPPORT_LOAD,
            Quantity.MAXIMUM_TENSION,
            Quantity.ARREST_FORCE,
            Quantity.REQUIRED_ELEVATION,
            Quantity.CLEARANCE_MARGIN);

    private final @Nullable SharedWork shared;
    private final ProgressListener listener;
    private final Method method;

    private DesignAnalysis(@Nullable SharedWork shared, ProgressListener listener, Method method) {
        this.shared = shared;
        this.listener = listener;
        this.method = method;
    }

    /**
     * By energy balance, in the calling thread.
     *
     * @return the analysis
     */
    public static DesignAnalysis withDefaults() {
        return new DesignAnalysis(null, ProgressListener.none(), Method.ENERGY_BALANCE);
    }

    /**
     * The same by another method. Worst places are looked for by energy balance in any case.
     *
     * @param value how arrests are computed
     * @return the new analysis
     */
    public DesignAnalysis withMethod(Method value) {
        Violations.required("method", value);
        return new DesignAnalysis(shared, listener, value);
    }

    /**
     * The same with its work done on an executor; the calling thread helps and waits.
     *
     * @param value the executor
     * @return the new analysis
     */
    public DesignAnalysis withExecutor(Executor value) {
        Violations.required("executor", value);
        return new DesignAnalysis(new SharedWork(value), listener, method);
    }

    /**
     * The same with a listener that can end the analysis.
     *
     * @param value the listener
     * @return the new analysis
     */
    public DesignAnalysis withProgress(ProgressListener value) {
        Violations.required("progress", value);
        return new DesignAnalysis(shared, value, method);
    }

    /**
     * Analyses a design.
     *
     * @param design the design
     * @return the arrests and what governs
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @throws org.lifeline.base.NoEquilibriumException if the line alone finds no equilibrium
     */
    public DesignResult solve(LifelineDesign design) {
        Violations.required("design", design);
        return design.falls().isEmpty() ? search(design) : stated(design, false);
    }

    @Override
    public Extremes extremes(LifelineDesign design) {
        Violations.required("design", design);
        return solve(design).extremes();
    }

    private DesignResult stated(LifelineDesign design, boolean searched) {
        List<FallCase> cases = new ArrayList<>();
        List<LoadCombination> combinations = new ArrayList<>();
        for (Fall fall : design.falls()) {
            for (double t : design.temperatures()) {
                for (DeploymentForce side : List.of(DeploymentForce.CLEARANCE, DeploymentForce.MAXIMUM)) {
                    LoadCombination combination = LoadCombinations.nominal(design, t, side);
                    combinations.add(combination);
                    cases.add(combination.of(fall));
                    if (fall.canRun() && method == Method.ENERGY_BALANCE) {
                        combinations.add(combination.held());
                        cases.add(combination.held().of(fall));
                    }
                }
            }
        }
        Extremes.Collector collector = new Extremes.Collector(design, ArrestQuantities.of(design, ForceFilter.NONE));
        List<ArrestResult> arrests = new ArrayList<>();
        List<ArrestResult> held = new ArrayList<>();
        List<FailedCase> failures = new ArrayList<>();
        long done = OrderedWork.run(
                cases.size(),
                i -> Attempt.of(combinations.get((int) i), cases.get((int) i), method),
                shared,
                (i, attempt) -> {
                    if (attempt.arrest() != null) {
                        (isHeld(attempt.arrest()) ? held : arrests).add(attempt.arrest());
                        collector.add(attempt.fallCase(), attempt.arrest());
                    }
                    if (attempt.failure() != null) {
                        failures.add(attempt.failure());
                    }
                    return listener.progress(i + 1, cases.size());
                });
        Extremes.Scope given = Extremes.Scope.of(design, Tolerances.none(), failures, done == cases.size());
        Extremes.Scope scope = searched ? given.over(Tolerances.none()) : given;
        Extremes extremes = collector.finish(scope);
        // Of the arrests whose connector is held, those are shown that govern something.
        List<Extreme> governing = extremes.all();
        held.stream()
                .filter(a -> governing.stream().anyMatch(e -> e.arrest().equals(a)))
                .forEach(arrests::add);
        return new DesignResult(extremes, arrests, searched);
    }

    private static boolean isHeld(ArrestResult arrest) {
        return arrest.attachmentLimit().equals(Optional.of(AttachmentLimit.HELD));
    }

    private DesignResult search(LifelineDesign design) {
        Envelope plain = Envelope.withDefaults().withAllCombinations().withProgress(listener);
        Envelope envelope = shared == null ? plain : shared.given(plain, Envelope::withExecutor);
        Map<String, Fall> falls = new LinkedHashMap<>();
        for (Worker worker : design.workers()) {
            Fall alone = Fall.builder("worker " + worker.id())
                    .at(Place.of(1, design.line().run(1) / 2))
                    .faller(worker)
                    .build();
            EnvelopeResult found = envelope.solve(design.withFalls(List.of(alone)));
            for (int span = 1; span <= design.line().spans(); span++) {
                for (Quantity q : IN_EVERY_SPAN) {
                    found.inSpan(span).of(q).ifPresent(e -> keep(e, falls));
                }
            }
            found.extremes().all().forEach(e -> keep(e, falls));
            if (!found.isComplete() || found.extremes().all().isEmpty()) {
                return new DesignResult(found.extremes(), List.of(), true);
            }
        }
        return stated(design.withFalls(List.copyOf(falls.values())), true);
    }

    /** The fall of an extreme under a name that says where it is. */
    private static void keep(Extreme e, Map<String, Fall> falls) {
        Fall f = e.fallCase().fall();
        String id = String.format(
                Locale.ROOT,
                "%s, %s",
                f.id(),
                f.place()
                        .support()
                        .map(support -> "at " + support)
                        .orElseGet(() -> String.format(
                                Locale.ROOT,
                                "span %d, %.3f m",
                                f.place().span(),
                                f.place().station())));
        Fall.Builder b = Fall.builder(id).at(f.place());
        f.fallers().forEach(b::faller);
        falls.putIfAbsent(id, b.build());
    }

    /** One case: an arrest, or why there is none. */
    private record Attempt(
            FallCase fallCase,
            @Nullable ArrestResult arrest,
            @Nullable FailedCase failure) {
        static Attempt of(LoadCombination combination, FallCase fallCase, Method method) {
            try {
                ArrestResult arrest =
                        method == Method.TRANSIENT ? combination.solveInTime(fallCase) : combination.solve(fallCase);
                return new Attempt(fallCase, arrest, null);
            } catch (InvalidInputException | NoEquilibriumException e) {
                return new Attempt(fallCase, null, new FailedCase(fallCase, e));
            }
        }
    }
}
