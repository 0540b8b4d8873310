package org.lifeline.examples.programs;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.lifeline.analysis.Statics;
import org.lifeline.base.InertText;
import org.lifeline.base.Interval;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.variable.Axis;
import org.lifeline.design.variable.DesignMap;
import org.lifeline.design.variable.DesignMapResult;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.design.variable.FeasibleInterval;
import org.lifeline.design.variable.Trial;
import org.lifeline.examples.cli.Progress;
import org.lifeline.examples.print.WrappedText;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.FileArguments;
import org.lifeline.examples.shared.LineScope;
import org.lifeline.file.DesignFile;
import org.lifeline.file.output.FileKind;
import org.lifeline.file.output.Output;
import org.lifeline.file.output.OutputSet;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.chart.ChartAxis;
import org.lifeline.report.chart.MapGrid;
import org.lifeline.report.chart.MapPicture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/**
 * The criteria of a design over two variables at once, elevation of the line and pretension: a table of the worst ratios, the
 * feasible range in each row, and a picture if a file is named.
 */
public final class TwoVariables {
    private static final String ALL_MET = "all met by energy balance";
    private static final String NOT_ANALYSED = "cannot be analysed";
    private static final int MOST_CLASSES = 7;
    private static final int INDENT = 14;
    /** From so many pretensions on, a feasible range has a line of its own. */
    private static final int MANY = 6;

    private TwoVariables() {}

    /**
     * Prints the map, and draws it.
     *
     * @param args nothing; or a design file; or a design file and the file that the picture goes to, such as {@code map.svg};
     *     {@code --stated-falls} keeps to the stated falls
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        FileArguments given = FileArguments.of(args);
        try (OutputSet outputs = given.outputsOfDesign()) {
            try (LineScope scope = LineScope.of(given.has(FileArguments.STATED_FALLS))) {
                run(outputs, given.plain(), scope);
            }
        }
    }

    private static void run(OutputSet outputs, String[] args, LineScope scope) throws IOException {
        DesignFile file = DesignArgument.read(args);
        Output picture = args.length > 1 ? outputs.claim(args[1], FileKind.PICTURE) : null;
        double now = file.design().line().supports().get(0).position().z();
        Axis elevation = Axis.even(
                file.following(DesignVariables.lineElevation(Interval.of(now - 0.4, now + 0.8))),
                args.length > 1 ? 13 : 5);
        Axis pretension =
                Axis.even(file.following(DesignVariables.pretension(Interval.of(500, 8000))), args.length > 1 ? 7 : 4);
        DesignMapResult result = DesignMap.withCriteria(file.criteria())
                .withAnalysis(scope.analysis())
                .withExecutor(scope.threads())
                .withProgress(new Progress(System.err, System::nanoTime))
                .solve(file.design(), elevation, pretension);
        List<DesignMap.Column> map = result.columns();
        System.out.println(scope.words());
        System.out.println("As designed, the first support at " + String.format(Locale.ROOT, "%.2f m: ", now)
                + asDesigned(scope, file));
        result.incompleteBecause().ifPresent(why -> System.out.println("INCOMPLETE: " + InertText.plain(why)));
        if (picture != null) {
            picture.put(draw(map, scope, file.design(), pretension));
            outputs.commit();
            System.out.println("drawn: " + InertText.plain(args[1]) + ", with the values of this table");
        }
        System.out.println("worst ratio of demand to capacity, and the pretension at which all criteria are met");
        System.out.println("line at [m]"
                + pretension.values().stream()
                        .map(v -> String.format(Locale.ROOT, "%6.2f kN", v / 1000))
                        .collect(Collectors.joining())
                + (pretension.values().size() < MANY ? "   feasible pretension" : ""));
        for (DesignMap.Column column : map) {
            String ratios = String.format(Locale.ROOT, "%11.2f", column.value())
                    + column.cells().stream().map(TwoVariables::ratio).collect(Collectors.joining());
            String ranges = "   " + ranges(column);
            if (ratios.length() + ranges.length() <= WrappedText.COLUMNS) {
                System.out.println(ratios + ranges);
            } else {
                System.out.println(ratios);
                WrappedText.of(ranges.strip(), WrappedText.COLUMNS - INDENT)
                        .forEach(l -> System.out.println(" ".repeat(INDENT) + l));
            }
        }
        map.stream()
                .flatMap(c -> c.range().notEvaluated().stream())
                .distinct()
                .forEach(open -> System.out.println("says nothing of " + InertText.plain(open)));
    }

    private static String asDesigned(LineScope scope, DesignFile file) {
        Extremes extremes = scope.analysis().extremes(file.design());
        List<String> notMet = Criteria.check(file.criteria(), extremes).stream()
                .filter(c -> c.status() != Status.MET)
                .map(c -> InertText.name(c.criterion().id()) + " " + c.status().words())
                .toList();
        return notMet.isEmpty() ? ALL_MET : String.join(", ", notMet);
    }

    private static String ratio(Trial t) {
        return Double.isInfinite(t.ratio()) ? "        -" : String.format(Locale.ROOT, "%9.3f", t.ratio());
    }

    private static String ranges(DesignMap.Column column) {
        if (column.range().intervals().isEmpty()) {
            return "none: "
                    + column.cells().stream()
                            .map(t -> t.governing().isEmpty() ? NOT_ANALYSED : InertText.name(t.governing()))
                            .distinct()
                            .collect(Collectors.joining(", "));
        }
        return column.range().intervals().stream().map(TwoVariables::range).collect(Collectors.joining(", "));
    }

    private static String range(FeasibleInterval i) {
        return String.format(
                Locale.ROOT, "%.3f to %.3f kN", i.low().value() / 1000, i.high().value() / 1000);
    }

    private static String draw(List<DesignMap.Column> map, LineScope scope, LifelineDesign design, Axis pretension) {
        List<String> names = new ArrayList<>(List.of(ALL_MET));
        int[][] classes = new int[pretension.values().size()][map.size()];
        double[][] ratios = new double[classes.length][map.size()];
        for (int j = 0; j < map.size(); j++) {
            for (int i = 0; i < classes.length; i++) {
                String name = name(map.get(j).cells().get(i));
                if (!names.contains(name)) {
                    names.add(names.size() < MOST_CLASSES - 1 ? name : "others");
                }
                ratios[i][j] = map.get(j).cells().get(i).ratio();
                classes[i][j] = names.contains(name) ? names.indexOf(name) : names.size() - 1;
            }
        }
        return MapPicture.in(UnitChoice.SI)
                .draw(
                        "Which criterion governs, over elevation and pretension",
                        scope.words() + " Where no criterion is named, every ratio of demand to capacity is at most 1.",
                        new ChartAxis("elevation of the first support", QuantityKind.LENGTH),
                        new ChartAxis("pretension", QuantityKind.FORCE),
                        MapGrid.of(
                                        map.stream()
                                                .mapToDouble(DesignMap.Column::value)
                                                .toArray(),
                                        values(pretension),
                                        classes,
                                        names)
                                .withRatios(ratios)
                                .withDesignX(design.line()
                                        .supports()
                                        .get(0)
                                        .position()
                                        .z())
                                .withDesignY(Statics.withDefaults()
                                        .solve(design.line(), List.of())
                                        .firstTension()))
                .svg();
    }

    private static String name(Trial t) {
        return t.isFeasible() ? ALL_MET : t.governing().isEmpty() ? NOT_ANALYSED : t.governing();
    }

    private static double[] values(Axis axis) {
        return axis.values().stream().mapToDouble(Double::doubleValue).toArray();
    }
}
