package org.lifeline.design.installation;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Vector3;
import org.lifeline.base.unit.SignificantDigits;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.design.field.FieldCheck;
import org.lifeline.design.field.Measurement;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.field.StringingTable;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/**
 * Draws up what those need who install a line.
 *
 * <p>The tensioner draws out S(hand) − S(p) of stress-free cable, S the length at which the line has the tension that is named at
 * that temperature, while its supports give way by Σ ΔR·R/(k T): the work of the change ΔR of the reactions, since the length of
 * the line between its supports changes by R/T for a small way of a support (first variation of the length; T the tension).
 * Constructional stretch acts as a rise of temperature does: it lengthens the stress-free cable. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class InstallationPlan {
    /** Readings outside the tolerance that are looked at, as factors on its lower and upper end [-]. */
    private static final List<Double> OUTSIDE = List.of(0.5, 2.0);

    /** Rise of temperature that stands for a constructional stretch [K]: any would do, the expansion is set to fit. */
    private static final double RISE = 100;

    private final InstallationRequest request;
    private final @Nullable WorstCases analysis;

    private InstallationPlan(InstallationRequest request, @Nullable WorstCases analysis) {
        this.request = request;
        this.analysis = analysis;
    }

    /**
     * With the effect of readings on the whole line by energy balance.
     *
     * @param request how the line is to be installed
     * @return the plan
     */
    public static InstallationPlan of(InstallationRequest request) {
        return new InstallationPlan(request, Envelope.withDefaults());
    }

    /**
     * The same with another analysis of what a reading means.
     *
     * @param value the analysis
     * @return the new plan
     */
    public InstallationPlan withAnalysis(WorstCases value) {
        return new InstallationPlan(request, value);
    }

    /**
     * The same without what readings mean.
     *
     * @return the new plan
     */
    public InstallationPlan withoutReadings() {
        return new InstallationPlan(request, null);
    }

    /**
     * How the line is to be installed.
     *
     * @return the request
     */
    public InstallationRequest request() {
        return request;
    }

    /**
     * Draws up the plan.
     *
     * @param design the design
     * @return lengths, take-up, stretch, stringing table, readings
     * @throws InvalidInputException if the line cannot hang as stated, or cannot have the pretension of a reading; the
     *     violation then says which reading it is
     * @throws org.lifeline.base.NoEquilibriumException if no equilibrium was found
     */
    public InstallationResult solve(LifelineDesign design) {
        Lifeline line = free(design.line());
        LineEquilibrium installed = Statics.withDefaults().solve(line, List.of());
        List<CutLength> lengths = new ArrayList<>();
        for (SpanState each : installed.spans()) {
            lengths.add(new CutLength(each.number(), line.run(each.number()), each.unstretchedLength()));
        }
        List<Double> temperatures = temperatures(line.installed().temperature());
        List<TakeUp> takeUps = new ArrayList<>();
        temperatures.forEach(t -> takeUps.add(takeUp(line, t)));
        List<StretchEffect> stretch = stretch(line, installed);
        List<StringingRow> stringing =
                StringingTable.withDefaults().withTolerance(request.tolerance()).solve(line, temperatures);
        return new InstallationResult(
                design,
                request,
                lengths,
                new InstallationResult.Tensioning(List.copyOf(takeUps), List.copyOf(stretch), stringing),
                readings(design, installed.firstTension(), stretch));
    }

    private static Lifeline free(Lifeline line) {
        return line.withSupports(s -> s.isEnd() ? s : s.withPassage(Passage.free()));
    }

    private List<Double> temperatures(double designed) {
        TreeSet<Double> set = new TreeSet<>();
        Interval range = request.temperatures();
        set.add(range.low());
        set.add(range.high());
        if (range.contains(designed)) {
            set.add(designed);
        }
        return List.copyOf(set);
    }

    private TakeUp takeUp(Lifeline line, double temperature) {
        LineEquilibrium tight =
                Statics.withDefaults().withTemperature(temperature).solve(line, List.of());
        double tension = tight.firstTension();
        double hand = Math.min(request.handTight(), tension);
        LineEquilibrium slack = Statics.withDefaults()
                .solve(line.withInstalled(Installed.pretension(hand).atTemperature(temperature)), List.of());
        double rope = length(slack) - length(tight);
        return new TakeUp(temperature, Interval.of(hand, tension), rope, structure(line, slack, tight));
    }

    private static double length(LineEquilibrium state) {
        return state.spans().stream().mapToDouble(SpanState::unstretchedLength).sum();
    }

    /** By how much supports and in-line absorbers shorten the way between the anchors' seats from one state to another [m]. */
    private static double structure(Lifeline line, LineEquilibrium slack, LineEquilibrium tight) {
        double sum = 0;
        double tension = tight.firstTension();
        for (int i = 0; i < line.supports().size(); i++) {
            Support s = line.supports().get(i);
            Stiffness k = s.stiffness();
            Vector3 now = tight.supports().get(i).vector();
            Vector3 change = now.minus(slack.supports().get(i).vector());
            sum += (change.x() * now.x() / k.x() + change.y() * now.y() / k.y() + change.z() * now.z() / k.z())
                    / tension;
        }
        for (Support s : line.supports()) {
            if (s.inlineAbsorber().isPresent()) {
                InlineAbsorber a = s.inlineAbsorber().get();
                sum += (a.curve().farExtension(tension) - a.curve().farExtension(slack.firstTension()));
            }
        }
        return sum;
    }

    private List<StretchEffect> stretch(Lifeline line, LineEquilibrium installed) {
        List<StretchEffect> list = new ArrayList<>();
        request.stretch().ifPresent(s -> {
            for (double each : new TreeSet<>(List.of(s.range().low(), s.range().high()))) {
                Lifeline longer = line.withCable(
                        line.cable().toBuilder().thermalExpansion(each / RISE).build());
                LineEquilibrium after = Statics.withDefaults()
                        .withTemperature(line.installed().temperature() + RISE)
                        .solve(longer, List.of());
                double sag =
                        after.spans().stream().mapToDouble(SpanState::sag).max().orElse(0);
                list.add(new StretchEffect(each, after.firstTension(), sag, each * length(installed)));
            }
        });
        return list;
    }

    private List<ReadingEffect> readings(LifelineDesign design, double pretension, List<StretchEffect> stretch) {
        List<ReadingEffect> list = new ArrayList<>();
        if (analysis == null) {
            return list;
        }
        Interval tolerance = request.tolerance();
        list.add(new ReadingEffect("as designed", pretension, analysis.extremes(design)));
        list.add(reading(analysis, design, "lower end of the tolerance", tolerance.low() * pretension));
        list.add(reading(analysis, design, "upper end of the tolerance", tolerance.high() * pretension));
        list.add(reading(analysis, design, "half the lower end", OUTSIDE.get(0) * tolerance.low() * pretension));
        list.add(reading(analysis, design, "twice the upper end", OUTSIDE.get(1) * tolerance.high() * pretension));
        for (StretchEffect each : stretch) {
            list.add(reading(
                    analysis,
                    design,
                    "left after a stretch of " + SignificantDigits.of(100 * each.stretch(), 3) + " %, not re-tensioned",
                    each.pretension()));
        }
        return list;
    }

    private static ReadingEffect reading(WorstCases analysis, LifelineDesign design, String name, double tension) {
        double t = design.line().installed().temperature();
        Measurement measured = Measurement.firstTension(tension).atTemperature(t);
        try {
            return new ReadingEffect(
                    name,
                    tension,
                    FieldCheck.withDefaults()
                            .withAnalysis(analysis)
                            .solve(design, measured)
                            .extremes());
        } catch (InvalidInputException e) {
            // Nobody gave this reading: the message says which of the plan it is.
            InvalidInputException named = new InvalidInputException(e.violations().stream()
                    .map(v -> v.at(name + ", " + v.path()))
                    .toList());
            named.initCause(e);
            throw named;
        }
    }
}
