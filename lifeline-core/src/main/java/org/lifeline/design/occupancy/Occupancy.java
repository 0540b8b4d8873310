package org.lifeline.design.occupancy;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Worker;

/**
 * Looks for the largest number of workers that may be hooked on so that all criteria are met.
 *
 * <p>First every span by itself: one worker, two, three, until a criterion breaks or the crew ends. Then the whole line, with no
 * more in each span than it takes. In every arrangement the fall is moved along the span, in all combinations of temperature
 * and force that may govern and with the attachment running and held. The numbers grow one by one, so that a number counts only if every smaller one is met as
 * well. A criterion that cannot be evaluated counts as not met. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Occupancy {
    /** Different selections of a crew that are tried for each number, the heaviest first. */
    public static final int MOST_CREWS = 4;

    private final List<Criterion> criteria;
    private final Envelope envelope;
    private final @Nullable Assessment assessment;

    private Occupancy(List<Criterion> criteria, Envelope envelope, @Nullable Assessment assessment) {
        this.criteria = criteria;
        this.envelope = envelope;
        this.assessment = assessment;
    }

    /**
     * By energy balance.
     *
     * @param criteria what must be met, at least one
     * @return the analysis
     * @throws org.lifeline.base.InvalidInputException if there is no criterion: then any number would do
     */
    public static Occupancy meeting(List<Criterion> criteria) {
        Violations.requiredAll("criteria", criteria);
        new Violations()
                .require(!criteria.isEmpty(), "criteria", GivenValue.text("[]"), InputRule.CRITERION_NEEDED)
                .throwIfAny();
        return new Occupancy(List.copyOf(criteria), Envelope.withDefaults(), null);
    }

    /**
     * The same with the combinations of another envelope, for example one with tolerances.
     *
     * @param value the envelope whose combinations are tried
     * @return the new analysis
     */
    public Occupancy withEnvelope(Envelope value) {
        Violations.required("value", value);
        return new Occupancy(criteria, value, assessment);
    }

    /**
     * The same with the number in all confirmed by an assessment, with arrests in time where it follows them, and with a rescuer
     * on the line where the design states the mass of one; the number falls until the assessment meets the criteria. A second
     * fall within the first second that the design states is not followed: those who fall together are.
     *
     * @param value the assessment; its criteria are replaced by those here
     * @return the new analysis
     */
    public Occupancy confirmedBy(Assessment value) {
        Violations.required("value", value);
        return new Occupancy(criteria, envelope, value.withCriteria(criteria));
    }

    /**
     * Looks for the numbers.
     *
     * @param design the design; its workers are the crew, its falls are not used
     * @return the numbers with everything that was tried
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @throws org.lifeline.base.NoEquilibriumException if the line alone finds no equilibrium
     */
    public OccupancyResult solve(LifelineDesign design) {
        Violations.required("design", design);
        Crew crew = new Crew(design.workers());
        int spans = design.line().spans();
        List<TriedNumber> inSpans = new ArrayList<>();
        int[] capacity = new int[spans + 1];
        int leftOut = 0;
        for (int span = 1; span <= spans; span++) {
            for (int n = 1; n <= crew.size() && capacity[span] == n - 1; n++) {
                TriedNumber tried = inSpan(design, crew, span, n);
                leftOut = Math.max(leftOut, crew.selections(n).size() - MOST_CREWS);
                inSpans.add(tried);
                capacity[span] = tried.isMet() ? n : capacity[span];
            }
        }
        int places = 0;
        for (int each : capacity) {
            places += each;
        }
        List<TriedNumber> inAll = new ArrayList<>();
        boolean met = true;
        for (int n = 1; n <= Math.min(crew.size(), places) && met; n++) {
            TriedNumber tried = inAll(design, crew, capacity, n);
            inAll.add(tried);
            met = tried.isMet();
        }
        return new OccupancyResult(
                design, inSpans, inAll, new OccupancyResult.Scope(assessment != null, Math.max(0, leftOut)));
    }

    private TriedNumber inSpan(LifelineDesign design, Crew crew, int span, int n) {
        List<CriterionResult> broken = new ArrayList<>();
        int tried = 0;
        for (List<Worker> selection : first(crew.selections(n))) {
            Arrangements a = new Arrangements(design.line(), span);
            a.inOneSpan(selection);
            tried += a.falls().size();
            add(broken, new SpanScan(with(design, selection, a.falls()), envelope).run(span));
        }
        return new TriedNumber(n, span, tried, broken);
    }

    private TriedNumber inAll(LifelineDesign design, Crew crew, int[] capacity, int n) {
        List<CriterionResult> broken = new ArrayList<>();
        int tried = 0;
        Lifeline line = design.line();
        for (List<Worker> selection : first(crew.selections(n))) {
            List<Fall> falls = new ArrayList<>();
            for (int span = 1; span <= line.spans(); span++) {
                if (capacity[span] == 0) {
                    continue;
                }
                Arrangements a = new Arrangements(line, span);
                if (n <= capacity[span]) {
                    a.inOneSpan(selection);
                }
                a.overTheLine(selection, capacity);
                tried += a.falls().size();
                add(broken, new SpanScan(with(design, selection, a.falls()), envelope).run(span));
                String at = "span " + span + ", ";
                a.falls().forEach(f -> falls.add(renamed(f, at + f.id())));
            }
            if (assessment != null && broken.isEmpty()) {
                for (AssessedCriterion each :
                        assessment.solve(with(design, selection, falls)).criteria()) {
                    add(broken, each.result());
                }
            }
        }
        return new TriedNumber(n, 0, tried, broken);
    }

    private static List<List<Worker>> first(List<List<Worker>> selections) {
        return selections.subList(0, Math.min(MOST_CREWS, selections.size()));
    }

    private static Fall renamed(Fall f, String id) {
        Fall.Builder b = Fall.builder(id).at(f.place());
        f.fallers().forEach(b::faller);
        f.hanging().forEach(h -> b.hanging(h.worker(), h.place()));
        return b.build();
    }

    private void add(List<CriterionResult> broken, Extremes extremes) {
        criteria.forEach(c -> add(broken, c.check(extremes)));
    }

    private static void add(List<CriterionResult> broken, CriterionResult result) {
        if (!result.isMet()
                && broken.stream()
                        .noneMatch(b ->
                                b.criterion().id().equals(result.criterion().id()))) {
            broken.add(result);
        }
    }

    /** The design with these workers and falls. */
    private static LifelineDesign with(LifelineDesign design, List<Worker> workers, List<Fall> falls) {
        LifelineDesign.Builder b = LifelineDesign.builder(design.title())
                .line(design.line())
                .clearance(design.clearance())
                .modelFactors(design.modelFactors());
        design.workingFloor().ifPresent(b::workingFloor);
        design.rescuerMass().ifPresent(b::rescuerMass);
        design.temperatures().forEach(b::temperature);
        workers.forEach(b::worker);
        falls.forEach(b::fall);
        return b.build();
    }
}
