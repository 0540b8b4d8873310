package org.lifeline.design.assessment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.DesignResult;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;

/**
 * Assesses a design: the stated falls, the envelope over the whole line, arrests in time, criteria judged on the worst of all
 * of them, the independent check of what governs, warnings, and what could not be computed.
 *
 * <p>Where the design states a further worker who may fall within the first second, that second fall is followed in time beside
 * the worst arrests; where it states the mass of a rescuer, the line at rest with him and those who have fallen is computed.
 * Both count in what governs.
 *
 * <p>{@code Assessment.withDefaults().withCriteria(criteria).solve(design)}. The result is the same for any number of threads.
 * Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Assessment implements WorstCases, Canonical {
    private final Settings settings;
    private final @Nullable SharedWork shared;
    private final ProgressListener listener;

    /** What is computed and judged. */
    private record Settings(List<Criterion> criteria, Basis basis, Tolerances tolerances, InTime inTime) {
        Settings with(InTime value) {
            return new Settings(criteria, basis, tolerances, value);
        }
    }

    /** Whether arrests are followed in time, and how their forces are read. */
    private record InTime(boolean followed, ForceFilter filter) {}

    private Assessment(Settings settings, @Nullable SharedWork shared, ProgressListener listener) {
        this.settings = settings;
        this.shared = shared;
        this.listener = listener;
    }

    /**
     * Without criteria and tolerances, on the larger of both methods, in the calling thread.
     *
     * @return the analysis
     */
    public static Assessment withDefaults() {
        return new Assessment(
                new Settings(List.of(), Basis.LARGER_OF_BOTH, Tolerances.none(), new InTime(true, ForceFilter.NONE)),
                null,
                ProgressListener.none());
    }

    private Assessment with(Settings value) {
        return new Assessment(value, shared, listener);
    }

    /**
     * The same with criteria to judge.
     *
     * @param value the criteria
     * @return the new analysis
     */
    public Assessment withCriteria(List<Criterion> value) {
        Violations.required("criteria", value);
        return with(new Settings(List.copyOf(value), settings.basis, settings.tolerances, settings.inTime));
    }

    /**
     * The same with verdicts that rest on something else.
     *
     * @param value the basis
     * @return the new analysis
     */
    public Assessment withBasis(Basis value) {
        Violations.required("basis", value);
        return with(new Settings(settings.criteria, value, settings.tolerances, settings.inTime));
    }

    /**
     * The same over ranges of mass, pretension and friction.
     *
     * @param value the ranges
     * @return the new analysis
     */
    public Assessment withTolerances(Tolerances value) {
        Violations.required("tolerances", value);
        return with(new Settings(settings.criteria, settings.basis, value, settings.inTime));
    }

    /**
     * The same without arrests in time. A criterion on forces or distances that rests on them is then not met, only not
     * evaluated, however small its ratio.
     *
     * @return the new analysis
     */
    public Assessment withoutMotion() {
        return with(settings.with(new InTime(false, settings.inTime.filter)));
    }

    /**
     * The same with forces in time read behind a filter. Without it criteria read the force as it is, with what the mesh may
     * hide of it.
     *
     * @param value the filter
     * @return the new analysis
     */
    public Assessment withForceFilter(ForceFilter value) {
        Violations.required("forceFilter", value);
        return with(settings.with(new InTime(settings.inTime.followed, value)));
    }

    /**
     * The same with its work done on an executor; the calling thread helps and waits.
     *
     * @param value the executor
     * @return the new analysis
     */
    public Assessment withExecutor(Executor value) {
        Violations.required("executor", value);
        return new Assessment(settings, new SharedWork(value), listener);
    }

    /**
     * The same with a listener that hears of each piece of work that is done and can end the analysis. The total that it is
     * told grows while the worst is looked for.
     *
     * @param value the listener
     * @return the new analysis
     */
    public Assessment withProgress(ProgressListener value) {
        Violations.required("progress", value);
        return new Assessment(settings, shared, value);
    }

    /**
     * Assesses a design.
     *
     * @param design the design
     * @return everything that was found
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @throws org.lifeline.base.NoEquilibriumException if the line alone finds no equilibrium
     */
    public AssessmentResult solve(LifelineDesign design) {
        StagedProgress progress = new StagedProgress(listener);
        DesignAnalysis analysis = DesignAnalysis.withDefaults().withProgress(progress.stage());
        DesignResult stated =
                (shared == null ? analysis : shared.given(analysis, DesignAnalysis::withExecutor)).solve(design);
        Envelope plain = Envelope.withDefaults().withTolerances(settings.tolerances);
        Envelope watched = plain.withProgress(progress.stage());
        EnvelopeResult envelope =
                (shared == null ? watched : shared.given(watched, Envelope::withExecutor)).solve(design);
        Extremes balance = Extremes.joined(stated.extremes(), List.of(envelope.extremes()));
        MotionSearch motion =
                new MotionSearch(new MotionSearch.Known(balance, settings.inTime.filter), plain, shared, progress);
        if (settings.inTime.followed && envelope.isComplete()) {
            motion.run(cases(stated, balance));
        }
        RescueSearch rescue = rescue(stated, envelope, plain, progress);
        AssessmentResult.Computed computed = new AssessmentResult.Computed(stated, envelope, balance, motion, rescue);
        return new AssessmentResult(
                new AssessmentResult.Basics(
                        settings.basis, settings.inTime.followed, settings.inTime.filter, settings.criteria),
                computed,
                computed.isComplete() ? checks(design, computed.extremes(), progress) : List.of());
    }

    /** The line at rest with a rescuer, where the design states one. */
    private @Nullable RescueSearch rescue(
            DesignResult stated, EnvelopeResult envelope, Envelope plain, StagedProgress progress) {
        LifelineDesign design = stated.design();
        if (design.rescuerMass().isEmpty()) {
            return null;
        }
        RescueSearch rescue = new RescueSearch(
                design, plain, shared, progress, design.rescuerMass().getAsDouble());
        if (envelope.isComplete()) {
            rescue.run(stated.cases());
        }
        return rescue;
    }

    @Override
    public Extremes extremes(LifelineDesign design) {
        return solve(design).extremes();
    }

    /** The stated cases, then those that govern by energy balance. */
    private static List<ComputedCase> cases(DesignResult stated, Extremes balance) {
        List<ComputedCase> list = new ArrayList<>(stated.cases());
        for (Extreme e : AssessmentResult.governing(balance.design(), balance)) {
            list.add(new ComputedCase(apart(e), e.arrest()));
        }
        return list;
    }

    /**
     * The case of an extreme, no nearer to a support than the survey goes: a piece of cable of a millimetre between the two is a
     * matter of the mesh, and a fall at the support itself is a case of its own.
     */
    private static FallCase apart(Extreme e) {
        Place place = e.fallCase().fall().place();
        if (place.isAtSupport()) {
            return e.fallCase();
        }
        double run = e.arrest().line().run(place.span());
        double least = SearchParameters.SURVEY.get(0) * run;
        double station = Math.max(least, Math.min(run - least, place.station()));
        return station == place.station() ? e.fallCase() : e.fallCase().at(Place.of(place.span(), station));
    }

    private List<IndependentCheck> checks(LifelineDesign design, List<Extremes> found, StagedProgress progress) {
        Map<String, ComputedCase> cases = new LinkedHashMap<>();
        List<Extreme> all = new ArrayList<>();
        found.forEach(e -> all.addAll(AssessmentResult.governing(design, e)));
        for (Extreme e : all) {
            FallCase c = e.fallCase();
            cases.putIfAbsent(e.arrest().method() + c.describe() + c.fall().place(), new ComputedCase(c, e.arrest()));
        }
        List<ComputedCase> list = List.copyOf(cases.values());
        List<IndependentCheck> checks = new ArrayList<>();
        progress.begin(list.size());
        OrderedWork.run(
                list.size(),
                i -> IndependentCheck.of(
                        list.get((int) i).fallCase(), list.get((int) i).arrest()),
                shared,
                (i, check) -> {
                    checks.add(check);
                    return progress.done(i + 1);
                });
        return checks;
    }

    /**
     * What the result depends on: executor and listener do not belong to it.
     *
     * @return criteria, basis, ranges, and whether arrests are followed in time
     */
    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("assessment");
        for (int i = 0; i < settings.criteria.size(); i++) {
            String path = CanonicalForm.Builder.element("criterion", i);
            b.text(path + ".id", settings.criteria.get(i).id());
            b.text(path + ".title", settings.criteria.get(i).title());
        }
        return b.text("basis", settings.basis.name())
                .part("tolerances", settings.tolerances)
                .text("motion", settings.inTime.followed)
                .text("forceFilter", settings.inTime.filter.name())
                .build();
    }
}
