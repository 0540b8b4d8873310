package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.examples.shared.FileArguments;
import org.lifeline.file.output.FileKind;
import org.lifeline.file.output.Output;
import org.lifeline.file.output.OutputSet;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.chart.ChartAxis;
import org.lifeline.report.chart.ChartPanel;
import org.lifeline.report.chart.ChartPicture;
import org.lifeline.report.chart.ChartSeries;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/** How the span changes anchor force, sag and clearance: a table, and a picture if a file is named. */
public final class SpanStudy {
    private SpanStudy() {}

    /**
     * Prints the table.
     *
     * @param args nothing, or the file that the picture goes to, such as {@code span-study.svg}; {@code --overwrite} lets it
     *     replace any file but a design
     * @throws IOException if the picture cannot be written
     */
    public static void main(String[] args) throws IOException {
        FileArguments given = FileArguments.of(args);
        try (OutputSet outputs = given.outputs()) {
            Output picture = given.plain().length > 0 ? outputs.claim(given.plain()[0], FileKind.PICTURE) : null;
            run(picture);
            outputs.commit();
        }
    }

    private static void run(@Nullable Output file) throws IOException {
        Worker worker = Worker.builder("student's worker")
                .mass(100)
                .walkingLevel(10)
                .connection(Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
        Cable cable = Cable.builder()
                .massPerLength(0.41)
                .axialStiffness(meganewtons(3.3))
                .build();
        int n = 10;
        double[] span = new double[n];
        double[] anchor = new double[n];
        double[] arrest = new double[n];
        double[] sag = new double[n];
        double[] clearance = new double[n];
        System.out.println(
                "A fall of 100 kg in the middle of a line installed with a sag of one hundredth of the span.");
        System.out.println(
                "Loads with the maximum deployment force, sag and clearance with the clearance deployment force.");
        System.out.println("span [m]  anchor load [kN]  arrest force [kN]  sag [m]  clearance below [m]");
        for (int i = 0; i < n; i++) {
            span[i] = 4.0 * (i + 1);
            // Installed with a sag of 1 % of the span; the fall in the middle.
            Lifeline line = Lifeline.builder()
                    .cable(cable)
                    .endAnchor("left", Point.of(0, 0, 11.5))
                    .endAnchor("right", Point.of(span[i], 0, 11.5))
                    .installed(Installed.initialSag(1, 0.01 * span[i]))
                    .build();
            Fall fall = Fall.builder("middle")
                    .at(Place.of(1, span[i] / 2))
                    .faller(worker)
                    .build();
            ArrestResult loads = EnergyBalance.withDefaults().solve(line, fall);
            ArrestResult distances = EnergyBalance.withDefaults()
                    .withSide(DeploymentForce.CLEARANCE)
                    .solve(line, fall);
            anchor[i] = loads.endAnchorLoad();
            arrest[i] = loads.arrestForce();
            sag[i] = distances.sag();
            clearance[i] = distances.clearance().requiredBelowLine();
            System.out.printf(
                    Locale.ROOT,
                    "%8.0f  %16.2f  %17.2f  %7.2f  %20.2f%n",
                    span[i],
                    anchor[i] / 1000,
                    arrest[i] / 1000,
                    sag[i],
                    clearance[i]);
        }
        if (file != null) {
            Picture picture = ChartPicture.in(UnitChoice.SI)
                    .draw(
                            "Anchor load, sag and clearance over the span",
                            "By energy balance, with an absorber on its plateau, the anchor load hardly changes with the span;"
                                    + " in time it is larger on short spans. Sag and clearance grow with the span.",
                            new ChartAxis("span", QuantityKind.LENGTH),
                            List.of(
                                    ChartPanel.of(
                                            new ChartAxis("force", QuantityKind.FORCE),
                                            ChartSeries.of("anchor load", span, anchor),
                                            ChartSeries.of("arrest force", span, arrest)),
                                    ChartPanel.of(
                                            new ChartAxis("distance", QuantityKind.LENGTH),
                                            ChartSeries.of("clearance", span, clearance),
                                            ChartSeries.of("sag at the load", span, sag))));
            file.put(picture.svg());
        }
    }
}
