package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.ReportSamples;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** What the documents of a plan state: each the largest of all arrests, with the arrest that has it. */
class PlanDocumentsSectionTest {
    private static final LifelineDesign DESIGN = SampleDesigns.design("d");
    private static final List<ArrestResult> ARRESTS = ReportSamples.arrests(DESIGN);
    private static final LineEquilibrium INSTALLED = Statics.withDefaults().solve(DESIGN.line(), List.of());
    private static final ReportSection SECTION = section(ARRESTS);

    private static ReportSection section(List<ArrestResult> arrests) {
        return new PlanDocumentsSection(DESIGN, arrests, INSTALLED, Quantities.in(UnitChoice.SI))
                .section(Optional.empty());
    }

    private static String item(ReportSection s, String name) {
        return Printed.row(Printed.table(s, "What the documents"), name).get(1);
    }

    private static void largest(String item, String name, ToDoubleFunction<ArrestResult> value) {
        double most = ARRESTS.stream().mapToDouble(value).max().orElseThrow();
        assertThat(PrintedNumber.of(item).get(0).si()).as(name).isCloseTo(most, within(5.1 * (most > 100 ? 1 : 1e-4)));
        int number = Integer.parseInt(item.replaceAll("(?s).* in arrest ([0-9]+).*", "$1"));
        assertThat(value.applyAsDouble(ARRESTS.get(number - 1))).isCloseTo(most, within(1e-9 * most));
    }

    @Test
    void loadsAndDistancesAreTheLargestWithTheirArrest() {
        largest(item(SECTION, "Maximum arrest load at the end anchors"), "MAL", ArrestResult::endAnchorLoad);
        largest(item(SECTION, "Maximum arrest force on a worker"), "MAF", ArrestResult::arrestForce);
        String deployment = item(SECTION, "Deployment of absorbers");
        largest(deployment.replaceAll(";.*", ""), "deployment", ArrestResult::deployment);
        largest(item(SECTION, "Clearance"), "clearance", r -> r.clearance().requiredBelowLine());
        double inline = ARRESTS.stream()
                .flatMap(r -> r.inlineAbsorbers().stream())
                .mapToDouble(a -> a.extension())
                .max()
                .orElseThrow();
        assertThat(deployment).contains(String.format(java.util.Locale.ROOT, "; in-line absorber %.3f m", inline));
    }

    @Test
    void everyComponentHasItsLargestLoad() {
        String[] parts = item(SECTION, "Maximum load on every component").split("; ", -1);
        assertThat(parts).hasSize(5);
        for (int i = 0; i < 4; i++) {
            int k = i;
            double most = ARRESTS.stream()
                    .mapToDouble(r -> r.supports().get(k).force())
                    .max()
                    .orElseThrow();
            String id = DESIGN.line().supports().get(i).id();
            assertThat(parts[i]).startsWith(id + " ");
            PrintedNumber.check(parts[i].substring(id.length() + 1), 1, most);
        }
        largest(parts[4].substring("cable ".length()), "cable", ArrestResult::maximumTension);
    }

    @Test
    void sagsAreThoseOfTheInstalledSpansAndOfTheWorstLoad() {
        String sags = item(SECTION, "Sags");
        List<PrintedNumber> numbers = PrintedNumber.of(sags.replaceAll(";.*", ""));
        assertThat(numbers).hasSize(3);
        double[] runs = {12, 10, 8};
        // All spans share their horizontal tension: sag w L²/8H goes with the square of the span.
        for (int i = 1; i < 3; i++) {
            double ratio = runs[i] * runs[i] / (runs[0] * runs[0]);
            assertThat(numbers.get(i).si()).isCloseTo(ratio * numbers.get(0).si(), within(0.0012));
        }
        largest(sags.replaceAll(".*; at the load ", ""), "sag", ArrestResult::sag);
    }

    @Test
    void lineWorkersAndComponentsAreDescribed() {
        assertThat(item(SECTION, "System type")).startsWith("horizontal lifeline of 3 spans; ");
        assertThat(item(SECTION, "Layout")).startsWith("spans of 12 m, 10 m, 8 m; ");
        assertThat(item(SECTION, "Number and mass range of workers"))
                .isEqualTo("2 described, 85 kg to 100 kg; at most 2 on the line in an analysed fall");
        assertThat(item(SECTION, "Component data"))
                .contains("termination efficiency 0.9", "north 45 kN, post 1 16 kN")
                .doesNotContain("south");
        assertThat(item(SECTION, "Environmental limits")).startsWith("analysed at −30 °C, 15 °C, 40 °C; ");
        assertThat(item(SECTION, "Proof test")).isEqualTo("to be stated by the engineer");
        assertThat(item(SECTION, "Exceptions")).isEqualTo("to be stated by the engineer");
        assertThat(Printed.words(SECTION)).startsWith("Loads and distances are those of the arrests as computed.");
    }

    @Test
    void theWorstTemperatureIsThatOfTheWorstArrests() {
        String worst = item(SECTION, "Worst case over temperature");
        assertThat(worst).startsWith("loads: ").contains("; distances: ").contains("−30 °C");
        ArrestResult load = ARRESTS.stream()
                .max(java.util.Comparator.comparingDouble(ArrestResult::endAnchorLoad))
                .orElseThrow();
        assertThat(worst).contains("loads: " + load.fall().id());
    }

    @Test
    void withoutFallsNothingIsMadeUp() {
        ReportSection none = section(List.of());
        for (String name : List.of(
                "Maximum arrest load",
                "Maximum load on every component",
                "Deployment",
                "Maximum arrest force",
                "Worst case",
                "Clearance")) {
            assertThat(item(none, name)).as(name).isEqualTo("no fall was analysed");
        }
        assertThat(item(none, "Sags")).startsWith("initial ").doesNotContain("at the load");
        assertThat(item(none, "Number and mass")).contains("at most 0 on the line");
    }

    @Test
    void anAssessmentGivesTheWorstOfTheWholeLine() {
        LifelineDesign design = Designs.design(1, Passage.free(), Attachment.GRIPPED).toBuilder()
                .fall(Fall.builder("f")
                        .at(Place.of(1, 4))
                        .faller(Designs.worker("A", Attachment.GRIPPED))
                        .build())
                .build();
        AssessmentResult a = Assessment.withDefaults().withoutMotion().solve(design);
        Quantities q = Quantities.in(UnitChoice.SI);
        ReportSection s = new PlanDocumentsSection(
                        design, a.stated().arrests(), Statics.withDefaults().solve(design.line(), List.of()), q)
                .section(Optional.of(new AssessmentSection(a, q)));
        assertThat(item(s, "System type")).startsWith("horizontal lifeline of 1 span; ");
        double load = a.governing("endAnchorLoad").orElseThrow().factored();
        PrintedNumber.check(item(s, "Maximum arrest load").replaceAll(" \\(.*", ""), 1, load);
        assertThat(item(s, "Maximum arrest load")).contains("(energy balance; ");
        assertThat(item(s, "Maximum load on every component"))
                .startsWith("north ")
                .contains(", south ", "; cable ");
        assertThat(item(s, "Worst case")).isEqualTo("named with each value");
        assertThat(item(s, "Clearance")).startsWith("required below the line ").contains("; margin ");
        assertThat(Printed.words(s)).startsWith("Loads and distances are the worst of the whole line");
        assertThat(Printed.tables(s)).extracting(ReportBlock.Table::caption).hasSize(1);
    }
}
