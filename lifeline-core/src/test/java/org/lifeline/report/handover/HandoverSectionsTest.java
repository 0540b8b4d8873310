package org.lifeline.report.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.design.occupancy.OccupancyResult;
import org.lifeline.design.occupancy.TriedNumber;
import org.lifeline.design.structure.LoadEffect;
import org.lifeline.design.structure.SupportLoadsResult;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;

/** Order and completeness of the parts; numbers of workers; posts, factors and straight pull in the loads. */
class HandoverSectionsTest {
    private static final Quantities SI = Quantities.in(UnitChoice.SI);
    private static final List<ReportSection> FULL = new HandoverSections(HandedOver.Full.RESULT, SI).sections();
    private static final SupportLoadsResult LOADS =
            HandedOver.Full.RESULT.structure().orElseThrow();

    @Test
    void partsStandInTheOrderOfThoseWhoNeedThem() {
        assertThat(FULL)
                .extracting(ReportSection::title)
                .containsExactly(
                        "Loads for the supporting structure",
                        "Number of workers",
                        "Clearance along the line",
                        "Installation");
        assertThat(HandedOver.Full.RESULT.notComputed()).isEmpty();
    }

    @Test
    void aPartThatCouldNotBeDrawnUpHasASectionThatSaysWhy() {
        List<ReportSection> bare = new HandoverSections(HandedOver.Bare.RESULT, SI).sections();
        assertThat(bare).extracting(ReportSection::title).containsExactly("Parts that could not be handed over");
        assertThat(Printed.words(bare.get(0))).contains("criteria");
    }

    @Test
    void aPullAcrossTheLineIsKnownOnlyWhereLoadsHaveOne() {
        assertThat(HandoverSections.pullsAside(Optional.empty())).isFalse();
        assertThat(HandoverSections.pullsAside(Optional.of(HandedOver.Bare.RESULT)))
                .isFalse();
        assertThat(HandoverSections.pullsAside(Optional.of(HandedOver.Full.RESULT)))
                .as("the angle was set to nothing")
                .isFalse();
        assertThat(Printed.words(FULL.get(0))).contains("taken to pull straight down, as the design states");
    }

    @Test
    void everyNumberThatWasTriedHasItsRow() {
        OccupancyResult o = HandedOver.Full.RESULT.occupancy().orElseThrow();
        ReportBlock.Table t = Printed.table(FULL.get(1), "Numbers tried");
        assertThat(t.rows()).hasSameSizeAs(o.tried());
        int largest = 0;
        for (int i = 0; i < t.rows().size(); i++) {
            List<String> c = t.rows().get(i).cells();
            TriedNumber tried = o.tried().get(i);
            assertThat(c.get(0)).isEqualTo(tried.span() == 0 ? "whole line" : "span " + tried.span() + ", 12 m");
            assertThat(c.get(1)).isEqualTo(Integer.toString(tried.number()));
            assertThat(c.get(2)).isEqualTo(Integer.toString(tried.arrangements()));
            assertThat(c.get(3).equals("all met")).isEqualTo(tried.notMet().isEmpty());
            if (!tried.isMet()) {
                assertThat(c.get(3)).startsWith("NOT MET: ").matches("NOT MET: (anchors|arrest force)(, .*)?");
            }
            largest = c.get(3).equals("all met") ? Math.max(largest, tried.number()) : largest;
        }
        assertThat(Printed.words(FULL.get(1)))
                .contains("with at most " + o.inAll() + " of the 2 workers")
                .contains("BY ENERGY BALANCE ALONE")
                .doesNotContain("lighter selections");
        assertThat(o.inAll()).isLessThanOrEqualTo(largest);
    }

    @Test
    void aPostIsListedWithItsStiffnessAndHowFarItMoves() {
        ReportBlock.Table t = Printed.table(FULL.get(0), "Posts");
        assertThat(t.rows()).hasSize(1);
        List<String> c = t.rows().get(0).cells();
        assertThat(c.get(0)).isEqualTo("post <1>");
        assertThat(c.get(1)).isEqualTo("1.5 m");
        // A cantilever: 3EI/h³ = 3·210e9·8e-6/1.5³ = 1493 kN/m.
        double k = 3 * 210e9 * 8e-6 / Math.pow(1.5, 3) / 1000;
        assertThat(Printed.number(c.get(2))).isCloseTo(k, within(0.5));
        assertThat(Printed.number(c.get(3))).isCloseTo(k, within(0.5));
        assertThat(c.get(4)).endsWith(" mm");
        // The largest shear moves the post by its force over its stiffness.
        List<String> shear = Printed.table(FULL.get(0), "Largest effects").rows().stream()
                .map(ReportBlock.Row::cells)
                .filter(r -> r.get(0).equals("post <1>") && r.get(1).contains("shear"))
                .findFirst()
                .orElseThrow();
        double force = Math.hypot(Printed.number(shear.get(4)), Printed.number(shear.get(5)));
        assertThat(Printed.number(c.get(4))).isCloseTo(1000 * force / k, within(0.06 + 10 / k));
        double share = LOADS.governing("post <1>", LoadEffect.ELASTIC_SHARE)
                .orElseThrow()
                .value();
        assertThat(Printed.number(c.get(5))).isCloseTo(share, within(0.0006));
        assertThat(Printed.words(FULL.get(0)))
                .contains("ATTENTION: post <1>: an elastic moment of resistance is stated for one direction only");
        assertThat(Printed.words(FULL.get(0))).doesNotContain("(share");
    }

    @Test
    void largestLoadsCarryTheFactorAndComponentsGiveTheResultant() {
        ReportBlock.Table t = Printed.table(FULL.get(0), "Largest effects");
        assertThat(t.rows()).hasSameSizeAs(LOADS.governing());
        int forces = 0;
        for (int i = 0; i < t.rows().size(); i++) {
            List<String> c = t.rows().get(i).cells();
            List<PrintedNumber> service = PrintedNumber.of(c.get(2));
            assertThat(c.get(7)).as("straight down").isEqualTo("0°");
            assertThat(c.get(8)).contains("energy balance").doesNotContain("in time");
            if (c.get(2).contains("kN·m")) {
                // Moment about the base of a post 1.5 m high: the horizontal force times its height.
                double horizontal = Math.hypot(Printed.number(c.get(4)), Printed.number(c.get(5)));
                assertThat(Printed.number(c.get(2))).isCloseTo(1.5 * horizontal, within(0.03));
            } else if (!service.isEmpty()) {
                double value = service.get(0).si();
                assertThat(PrintedNumber.of(c.get(3)).get(0).si()).isCloseTo(1.5 * value, within(12.6));
                forces++;
            }
        }
        assertThat(forces).isGreaterThan(5);
        assertThat(Printed.words(FULL.get(0))).contains("Factors as stated: ultimate 1.50 (brief 3).");
    }

    @Test
    void permanentLoadsAndPartnersCoverEverySupport() {
        for (String caption : List.of("Permanent loads", "Load cases")) {
            ReportBlock.Table t = Printed.table(FULL.get(0), caption);
            assertThat(t.rows()).extracting(r -> r.cells().get(0)).containsExactly("north", "post <1>", "south");
        }
    }
}
