package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.GoverningValue;
import org.lifeline.design.assessment.MotionScope;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/**
 * An assessment on one screen: what governs, where, by which method; criteria; warnings. At most {@value #LINES} lines of
 * {@value #COLUMNS} columns, in one system of units.
 */
public final class FirstScreen {
    /** Most lines. */
    public static final int LINES = 50;

    /** Longest line. */
    public static final int COLUMNS = WrappedText.COLUMNS;

    /** The quantities that are shown, in short words, in their order. */
    private static final Map<String, String> SHOWN = shown();

    /** The quantities that are said of a second fall and of a rescue, in short words. */
    private static final Map<String, String> IN_SHORT = Map.of(
            "endAnchorLoad", "end anchor load",
            "maximumTension", "tension",
            "sag", "sag",
            "clearanceMargin", "clearance margin");

    private static final int MOST_SUPPORTS = 6;
    private static final int MOST_CRITERIA = 12;

    private final AssessmentResult result;
    private final UnitSystem system;
    private final Quantities quantities;
    private final List<String> lines = new ArrayList<>();

    private FirstScreen(AssessmentResult result, UnitSystem system) {
        this.result = result;
        this.system = system;
        this.quantities = Quantities.in(system == UnitSystem.SI ? UnitChoice.SI : UnitChoice.US_CUSTOMARY);
    }

    private static Map<String, String> shown() {
        Map<String, String> map = new LinkedHashMap<>();
        map.put("endAnchorLoad", "End anchor load (MAL)");
        map.put("maximumTension", "Tension of the cable");
        map.put("arrestForce", "Arrest force (MAF)");
        map.put("freeFall", "Free fall");
        map.put("deployment", "Deployment");
        map.put("totalFallDistance", "Total fall distance");
        map.put("requiredBelowLine", "Clearance below the line");
        map.put("clearanceMargin", "Clearance margin");
        return map;
    }

    /**
     * The screen of an assessment.
     *
     * @param result the assessment
     * @param system the units
     * @return the lines, each ended by a line feed
     */
    public static String of(AssessmentResult result, UnitSystem system) {
        FirstScreen screen = new FirstScreen(result, system);
        screen.head();
        screen.governing();
        screen.allowance();
        screen.damping();
        screen.incidents();
        screen.criteria();
        screen.warnings();
        return screen.lines.stream().map(l -> cut(l) + "\n").collect(Collectors.joining());
    }

    private void head() {
        lines.add("ASSESSMENT: " + InertText.name(result.design().title()));
        lines.add("The falls of the design moved along the whole line"
                + (scaled() ? ", with the stated model factors." : "."));
        lines.add(
                result.motion() == MotionScope.LEFT_OUT
                        ? "By ENERGY BALANCE ALONE: arrests in time were left out."
                        : result.followed().size() + " arrests were followed in time to look for the worst.");
        lines.addAll(WrappedText.of(result.restsOn(), COLUMNS));
        if (!result.isComplete()) {
            lines.add("THE SEARCH WAS ENDED EARLY: worse cases may exist.");
        }
    }

    private boolean scaled() {
        return result.design().modelFactors().force() != 1
                || result.design().modelFactors().distance() != 1;
    }

    private void governing() {
        lines.add("");
        lines.add(row("WHAT GOVERNS (marked *)", "balance ", "in time ", "where"));
        for (String name : SHOWN.keySet()) {
            result.governing(name).ifPresent(g -> value(SHOWN.get(name), g));
        }
        List<GoverningValue> supports =
                result.governing().stream().filter(g -> g.support().isPresent()).toList();
        for (GoverningValue g : supports.subList(0, Math.min(MOST_SUPPORTS, supports.size()))) {
            value(CaseNames.capital(InertText.name(g.name())), g);
        }
        if (supports.size() > MOST_SUPPORTS) {
            lines.add("  and " + (supports.size() - MOST_SUPPORTS) + " more supports: see the report");
        }
    }

    private void value(String name, GoverningValue g) {
        boolean rest = g.method() == Method.RESCUE_AT_REST;
        lines.add(row(
                name,
                column(g, g.balanceExtreme(), g.method() == Method.ENERGY_BALANCE),
                column(g, g.inTimeExtreme(), g.method() == Method.TRANSIENT),
                (rest ? "RESCUE " + number(g.unit(), g.factored()) + "* " : "") + where(g.fallCase())));
    }

    private String column(GoverningValue g, Optional<Extreme> extreme, boolean governs) {
        return extreme.map(e -> number(g.unit(), e.value()) + (governs ? "*" : " "))
                .orElse("- ");
    }

    private static String row(String name, String balance, String inTime, String where) {
        return String.format(Locale.ROOT, "%-26.26s%11s%11s %s", name, balance, inTime, where);
    }

    private static QuantityKind kind(String unit) {
        return switch (unit) {
            case "N" -> QuantityKind.FORCE;
            case "m" -> QuantityKind.LENGTH;
            case "rad" -> QuantityKind.ANGLE;
            case "kg" -> QuantityKind.MASS;
            default -> QuantityKind.RATIO;
        };
    }

    /** A number whose unit stands elsewhere. */
    private String bare(String unit, double value) {
        return kind(unit).number(value, system);
    }

    private String number(String unit, double value) {
        QuantityKind kind = kind(unit);
        String name = kind.unit(system);
        return kind.number(value, system) + (name.isEmpty() ? "" : name.equals("°") ? name : " " + name);
    }

    private String where(FallCase c) {
        String place = c.fall()
                .place()
                .support()
                .map(id -> "at " + InertText.name(id))
                .orElseGet(() -> "span " + c.fall().place().span() + " "
                        + number("m", c.fall().place().station()));
        String later = c.later()
                .map(l -> String.format(Locale.ROOT, "+%.2fs ", l.delay()))
                .orElse("");
        return later + place + " " + quantities.input(QuantityKind.TEMPERATURE, c.temperature())
                + (c.side() == DeploymentForce.MAXIMUM ? " max" : " clr")
                + c.conditions().values().stream()
                        .map(condition -> " " + condition.kind().label())
                        .distinct()
                        .collect(Collectors.joining())
                + (c.attachmentLimit().filter(l -> l == AttachmentLimit.HELD).isPresent() ? " held" : "");
    }

    /** The end load in time without what the mesh may hide of it: one number, since two, each rounded, need not add up. */
    private void allowance() {
        result.governing("endAnchorLoad")
                .flatMap(GoverningValue::inTimeExtreme)
                .filter(e -> e.allowance() > 0 && Double.isFinite(e.allowance()))
                .ifPresent(e -> lines.add("In time with what the mesh may hide; without it the end anchor load: "
                        + number(e.unit(), e.computed())));
    }

    /** The range of the governing forces in time over the damping of the cable, for which no source is known. */
    private void damping() {
        List<String> parts = new ArrayList<>();
        for (String name : List.of("endAnchorLoad", "arrestForce")) {
            result.governing(name)
                    .ifPresent(g -> g.dampingRange()
                            .ifPresent(i ->
                                    parts.add(g.quantity().map(q -> q.words()).orElse(name) + " "
                                            + number(g.unit(), i.low()) + " to " + number(g.unit(), i.high()))));
        }
        if (!parts.isEmpty()) {
            lines.add("With 1/4 and 4 times the damping time: " + parts.get(0) + (parts.size() > 1 ? "," : ""));
            parts.subList(1, parts.size()).forEach(p -> lines.add("  " + p));
        }
    }

    /** A second fall within the first second, and the line at rest with a rescuer, where the design states them. */
    private void incidents() {
        result.design().secondFall().ifPresent(f -> {
            String who = "With a second fall, " + InertText.name(f.worker()) + " (+…s: so much later): ";
            lines.addAll(WrappedText.of(who + worst(result.secondFall()), COLUMNS, "  "));
        });
        result.design().rescuerMass().ifPresent(m -> {
            String what = "At rest with a rescuer of " + quantities.input(QuantityKind.MASS, m) + ": ";
            lines.addAll(WrappedText.of(what + worst(result.rescue()), COLUMNS, "  "));
        });
    }

    private String worst(Optional<Extremes> extremes) {
        if (extremes.isEmpty()) {
            return "NOT COMPUTED";
        }
        return extremes.get().governing().stream()
                .filter(e -> IN_SHORT.containsKey(e.name()))
                .map(e -> IN_SHORT.get(e.name()) + " " + number(e.unit(), e.value()))
                .collect(Collectors.joining(", "));
    }

    private void criteria() {
        lines.add("");
        if (result.criteria().isEmpty()) {
            lines.add("CRITERIA: the design names none");
            return;
        }
        lines.add("CRITERIA, on the worst of the whole line (b: by balance, t: in time; max, clr:");
        lines.add("the absorber's force" + (open() ? "; OPEN: not evaluated)" : ")"));
        int most = Math.min(MOST_CRITERIA, result.criteria().size());
        result.criteria().subList(0, most).forEach(this::criterion);
        if (result.criteria().size() > most) {
            lines.add("  and " + (result.criteria().size() - most) + " more: see the report");
        }
    }

    private static String letter(Method method) {
        return switch (method) {
            case ENERGY_BALANCE -> "b ";
            case TRANSIENT -> "t ";
            case RESCUE_AT_REST -> "r ";
        };
    }

    private boolean open() {
        return result.criteria().stream().anyMatch(c -> c.result().status() == Status.NOT_EVALUATED);
    }

    private void criterion(AssessedCriterion c) {
        CriterionResult r = c.result();
        String verdict =
                switch (r.status()) {
                    case MET -> "met";
                    case NOT_MET -> "NOT MET";
                    case NOT_EVALUATED -> "OPEN";
                };
        String numbers =
                Double.isNaN(r.ratio()) ? "" : bare(r.unit(), r.demand()) + " of " + number(r.unit(), r.capacity());
        String why = r.governing()
                .map(e -> letter(e.arrest().method()) + where(e.fallCase()))
                .orElse("");
        if (r.status() == Status.NOT_EVALUATED && numbers.isEmpty()) {
            numbers = r.reason();
            why = "";
        }
        lines.add(String.format(
                Locale.ROOT,
                "%-8s%-21.20s%-17s %s",
                verdict,
                InertText.name(r.criterion().id()),
                numbers,
                why));
    }

    private void warnings() {
        lines.add("");
        List<Warning> all = result.warnings();
        if (all.isEmpty()) {
            lines.add("WARNINGS: none");
            return;
        }
        lines.add("WARNINGS");
        int shown = 0;
        for (List<Warning> alike : result.warningsByKind()) {
            List<String> text = WrappedText.of("- " + warning(alike), COLUMNS, "  ");
            int left = all.size() - shown - alike.size();
            if (lines.size() + text.size() + (left > 0 ? 1 : 0) > LINES) {
                break;
            }
            lines.addAll(text);
            shown += alike.size();
        }
        if (shown < all.size()) {
            lines.add("- and " + (all.size() - shown) + " more: see the report or the result file");
        }
    }

    /** One warning with its numbers; or several in the same words, with what they are about. */
    private String warning(List<Warning> alike) {
        Warning first = alike.get(0);
        if (alike.size() > 1) {
            return InertText.name(first.text()) + ": "
                    + alike.stream().map(w -> InertText.name(w.subject())).collect(Collectors.joining(", "));
        }
        String numbers = Double.isNaN(first.value())
                ? ""
                : ": " + number(first.unit(), first.value())
                        + (Double.isNaN(first.limit()) ? "" : " against " + number(first.unit(), first.limit()));
        return InertText.name(first.subject() + ": " + first.text()) + numbers;
    }

    /** What does not fit a line is cut, with a mark. */
    private static String cut(String line) {
        return line.length() <= COLUMNS
                ? line.stripTrailing()
                : line.substring(0, COLUMNS - 3).stripTrailing() + "...";
    }
}
