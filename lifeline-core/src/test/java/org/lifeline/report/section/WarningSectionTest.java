package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.report.Printed;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;
import org.lifeline.verify.Check;
import org.lifeline.verify.Verifier;

/** A warning stands in the report where its condition holds, with its number, and nowhere else. */
class WarningSectionTest {
    private static final Worker WORKER = SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard());
    private static final IndependentCheckSection NONE = IndependentCheckSection.ofReports(List.of());

    private static Lifeline line(double height) {
        return Lifeline.builder()
                .cable(SampleDesigns.steel())
                .endAnchor("west", Point.of(0, 0, 12.4))
                .endAnchor("east", Point.of(10, 0, 12.4 + height))
                .installed(Installed.pretension(1500))
                .build();
    }

    private static LifelineDesign design(double height, double top, double station) {
        return LifelineDesign.builder("d")
                .line(line(height))
                .worker(WORKER)
                .clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 10, top))))
                .fall(Fall.builder("f").at(Place.of(1, station)).faller(WORKER).build())
                .build();
    }

    private static List<ArrestResult> arrests(LifelineDesign d) {
        return List.of(EnergyBalance.withDefaults()
                .withClearance(d.clearance())
                .solve(d.line(), d.falls().get(0)));
    }

    private static String words(
            LifelineDesign d, List<ArrestResult> arrests, List<TransientResult> motions, Optional<EnvelopeResult> e) {
        ReportSection s = new WarningSection(new GoverningArrests(d, arrests), Quantities.in(UnitChoice.SI))
                .section(NONE, motions, e);
        assertThat(s.title()).isEqualTo("Warnings");
        return Printed.words(s);
    }

    private static String words(LifelineDesign d) {
        return words(d, arrests(d), List.of(), Optional.empty());
    }

    @Test
    void withoutAnythingToSayNoneIsSaid() {
        LifelineDesign d = design(0, 0, 5);
        ReportSection s = new WarningSection(new GoverningArrests(d, List.of()), Quantities.in(UnitChoice.SI))
                .section(NONE, List.of(), Optional.empty());
        assertThat(s.blocks()).containsExactly(new ReportBlock.Paragraph("None."));
    }

    @Test
    void clearanceThatLacksIsSaidByHowMuch() {
        LifelineDesign d = design(0, 9, 5);
        double margin = arrests(d).get(0).clearance().margin().orElseThrow();
        assertThat(margin).isNegative();
        assertThat(words(d))
                .contains("Arrest 1: the clearance margin is negative; up to "
                        + String.format(java.util.Locale.ROOT, "%.3f m are LACKING.", -margin));
        assertThat(words(design(0, 0, 5))).doesNotContain("LACKING");
    }

    @Test
    void aSpanIsSteepFromFifteenDegreesOn() {
        double limit = 10 * Math.tan(Math.toRadians(15));
        assertThat(words(design(limit * 1.01, 0, 5))).contains("Span 1 climbs at 15.1°");
        assertThat(words(design(limit * 0.99, 0, 5))).doesNotContain("climbs at");
        assertThat(words(design(-limit * 1.01, 0, 5)))
                .as("a fall counts as well")
                .contains("Span 1 climbs at 15.1°");
    }

    @Test
    void aLineIsFlatFromSixTimesTheForceOn() {
        for (double pretension : new double[] {1500, 40_000}) {
            LifelineDesign d = design(0, 0, 5).toBuilder()
                    .line(SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(pretension)))
                    .build();
            ArrestResult r = arrests(d).get(0);
            boolean flat = r.maximumTension() > 6 * r.lineLoad();
            assertThat(words(d).contains("the sag angle is small, the tension is up to"))
                    .isEqualTo(flat);
            assertThat(flat).as("%s N", pretension).isEqualTo(pretension > 30_000);
        }
    }

    @Test
    void aModelFactorBelowOneIsSaidWithItsReason() {
        LifelineDesign d = design(0, 0, 5).toBuilder()
                .modelFactors(new ModelFactors(0.9, 1, "tests of the maker"))
                .build();
        assertThat(words(d))
                .contains("A model factor is below 1 (forces 0.9, distances 1)")
                .contains("Stated reason: tests of the maker");
        assertThat(RemarkSections.factorsBelowOne(design(0, 0, 5))).isEmpty();
    }

    @Test
    void aFallElsewhereThatIsWorseIsNamedWithBothNumbers() {
        LifelineDesign d = design(0, 0, 1);
        EnvelopeResult e = Envelope.withDefaults().withIntervals(4).solve(d);
        String text = words(d, arrests(d), List.of(), Optional.of(e));
        GoverningArrests here = new GoverningArrests(d, arrests(d));
        double far = e.extremes().of(Quantity.REQUIRED_BELOW_LINE).orElseThrow().value();
        double near = here.worst(Quantity.REQUIRED_BELOW_LINE).orElseThrow().factored();
        assertThat(far).isGreaterThan(near + 0.01);
        assertThat(text)
                .contains("A fall at another place of the line is more severe")
                .contains(String.format(java.util.Locale.ROOT, "%.3f m against %.3f m", far, near));
        // The arrests that govern the envelope are themselves the worst there are.
        List<ArrestResult> worst = new ArrayList<>();
        e.extremes().all().forEach(x -> worst.add(x.arrest()));
        assertThat(words(d, worst, List.of(), Optional.of(e))).doesNotContain("more severe");
    }

    @Test
    void anArrestInTimeSaysWhatIsNotKnownOfIt() {
        LifelineDesign d = design(0, 0, 5);
        TransientResult coarse = TransientArrest.withDefaults()
                .withSegmentLength(1)
                .withRefinements(0)
                .withDuration(0.7)
                .solve(d.line(), d.falls().get(0));
        String text = words(d, arrests(d), List.of(coarse), Optional.empty());
        assertThat(coarse.firstCatchOver()).isFalse();
        assertThat(text)
                .contains("In time, f, ")
                .contains("the motion was not followed to the end of the first catch.")
                .contains("fewer than three meshes were followed, so nothing bounds what finer ones change.");
        assertThat(text.contains("times that of the energy balance"))
                .isEqualTo(coarse.tensionRatio().orElse(0) > 1.01);
        String asArrest = words(d, List.of(coarse.arrest()), List.of(), Optional.empty());
        assertThat(asArrest).contains("Arrest 1: the motion was not followed");
    }

    @Test
    void whatResultsWarnOfIsSaidOnceForAllTheirArrests() {
        LifelineDesign d = design(0, 0, 2).toBuilder()
                .line(SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(4000)))
                .build();
        ArrestResult heavy = SampleDesigns.arrests().get("bottoms out");
        assertThat(heavy).isNotNull();
        List<ArrestResult> twice = List.of(java.util.Objects.requireNonNull(heavy), heavy);
        String text = words(d, twice, List.of(), Optional.empty());
        assertThat(heavy.warnings()).isNotEmpty();
        heavy.warnings().forEach(w -> assertThat(text).contains(w.text()));
        assertThat(text).contains("Arrests 1, 2: ");
        assertThat(text.lines().filter(l -> l.contains("is used up: force and distance")))
                .hasSize(1);
    }

    @Test
    void checksThatFailAreSaidFirstAndListedWithTheirLimits() {
        ArrestResult r = arrests(design(0, 0, 5)).get(0);
        // Nothing keeps a limit of nothing but what is exactly right.
        Verifier strict = Verifier.withDefaults().withLimit(Check.STRETCH, 1e-300);
        IndependentCheckSection check = IndependentCheckSection.ofReports(List.of(
                Optional.of(Verifier.withDefaults().arrest(r)), Optional.empty(), Optional.of(strict.arrest(r))));
        assertThat(check.failed()).containsExactly(3);
        assertThat(check.notCheckable()).isEmpty();
        ReportSection s = new WarningSection(
                        new GoverningArrests(design(0, 0, 5), List.of(r)), Quantities.in(UnitChoice.SI))
                .section(check, List.of(), Optional.empty());
        assertThat(Printed.words(s)).startsWith("Arrest 3: the independent check FAILED; do not use the results");
        ReportSection listed = check.section(true, r.before(), List.of(r, r, r));
        assertThat(Printed.words(listed)).contains("FAILED in arrest 3: ").contains("limit 1.0e−300");
        ReportBlock.Table t = Printed.table(listed, "Largest residuals");
        assertThat(t.rows()).extracting(row -> row.cells().get(0)).containsExactly("1", "3");
        assertThat(t.rows().get(0).cells().get(2)).isEqualTo("0");
        assertThat(Integer.parseInt(t.rows().get(1).cells().get(2))).isPositive();
        assertThat(t.rows().get(0).cells().get(1))
                .isEqualTo(t.rows().get(1).cells().get(1));
        ReportBlock.Table kinds = Printed.table(listed, "Every kind of check");
        IntStream.range(0, kinds.rows().size()).forEach(i -> {
            List<String> c = kinds.rows().get(i).cells();
            assertThat(c.get(3)).matches("arrest [13], .+");
            boolean keeps = Printed.number(c.get(1)) <= Printed.number(c.get(2)) * 1.05;
            assertThat(keeps || c.get(3).startsWith("arrest 3"))
                    .as(c.toString())
                    .isTrue();
        });
        assertThat(Printed.tables(check.section(false, r.before(), List.of(r, r, r))))
                .hasSize(1);
    }

    @Test
    void withoutAnArrestByEnergyBalanceThereIsNothingToCheck() {
        ArrestResult r = arrests(design(0, 0, 5)).get(0);
        ReportSection s = NONE.section(true, r.before(), List.of());
        assertThat(Printed.words(s)).contains("There is no arrest by energy balance.");
        assertThat(Printed.tables(s)).isEmpty();
        assertThat(IndependentCheckSection.of(List.of(r)).failed()).isEmpty();
        assertThat(IndependentCheckSection.power(0)).isEqualTo("0");
        assertThat(IndependentCheckSection.power(-1.26e-9)).isEqualTo("−1.3e−09");
    }
}
