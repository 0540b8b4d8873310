package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** Each arrest as printed: distances and energies add up, forces balance, and ratios are those of the printed numbers. */
class ArrestSectionsTest {
    private static final double G = 9.80665;
    private static final Map<String, ArrestResult> ARRESTS = SampleDesigns.arrests();
    private static final LifelineDesign DESIGN = SampleDesigns.design("d");
    private static final LifelineDesign SCALED =
            DESIGN.toBuilder().modelFactors(new ModelFactors(1.25, 1.1)).build();

    private static ArrestResult arrest(String name) {
        return java.util.Objects.requireNonNull(ARRESTS.get(name));
    }

    private static List<ReportSection> sections(ArrestResult r, LifelineDesign design, UnitChoice units) {
        return new ArrestSections(design, Quantities.in(units)).sections(3, r);
    }

    private static ReportSection first(ArrestResult r) {
        return sections(r, DESIGN, UnitChoice.SI).get(0);
    }

    private static double n(List<String> cells, int column) {
        return Printed.number(cells.get(column));
    }

    private static double value(ReportBlock.Table t, String row) {
        return n(Printed.row(t, row), 2);
    }

    @Test
    void theTotalFallDistanceIsTheSumOfItsParts() {
        ARRESTS.forEach((name, r) -> {
            ReportBlock.Table t = Printed.table(first(r), "Results");
            double sum = value(t, "Free fall") + value(t, "Deployment") + value(t, "Descent") + r.harnessStretch();
            assertThat(value(t, "Total fall distance")).as(name).isCloseTo(sum, within(0.0021));
        });
    }

    @Test
    void theForceOnTheLineIsThatOnTheWorkers() {
        ARRESTS.forEach((name, r) -> {
            ReportBlock.Table t = Printed.table(first(r), "Results");
            double arrest = value(t, "Maximum arrest force");
            double load = value(t, "Force on the line");
            int fallers = r.fall().fallers().size();
            assertThat(load).as(name).isBetween(arrest - 0.011, fallers * arrest + 0.011 * fallers);
            // Who falls at an anchor loads it beside the cable.
            double ratio = value(t, "Tension for each unit");
            assertThat(ratio).as(name).isCloseTo(value(t, "Largest tension") / load, within(0.005 * ratio));
            assertThat(value(t, "Largest load at an end anchor"))
                    .as(name)
                    .isLessThanOrEqualTo(value(t, "Largest tension") + (name.startsWith("at ") ? load : 0) + 0.02);
            assertThat(value(t, "Mass that falls")).isEqualTo(r.fall().fallingMass());
        });
    }

    @Test
    void sagIsTheDepthOfTheLoadBelowTheChord() {
        for (String name : List.of("bottoms out", "two together", "fibre")) {
            ArrestResult r = arrest(name);
            ReportBlock.Table t = Printed.table(first(r), "Results");
            // Level rigid supports at 12.4 m.
            assertThat(value(t, "Sag at the load"))
                    .isCloseTo(12.4 - r.attachmentAtPeak().z(), within(0.00051));
            assertThat(value(t, "Line at the station before") - value(t, "Descent of the line"))
                    .isCloseTo(12.4 - value(t, "Sag at the load"), within(0.0016));
            assertThat(value(t, "Distance of the load"))
                    .isCloseTo(r.attachmentAtPeak().x(), within(0.00051));
        }
    }

    @Test
    void freeFallFollowsFromLanyardHarnessAndLine() {
        for (String name : List.of("bottoms out", "fibre", "plain lanyard")) {
            ArrestResult r = arrest(name);
            ReportBlock.Table t = Printed.table(first(r), "Results");
            double taut = name.equals("plain lanyard") ? 1.5 : 1.8;
            double expected = Math.max(0, taut + value(t, "Harness attachment") - value(t, "Line at the station"));
            assertThat(value(t, "Free fall")).as(name).isCloseTo(expected, within(0.0016));
            assertThat(Printed.row(t, "Free fall")).endsWith("[2]");
        }
    }

    @Test
    void energiesAddUpAsPrintedToWhatTheFallSetFree() {
        ARRESTS.forEach((name, r) -> {
            ReportSection s = first(r);
            ReportBlock.Table energy = Printed.table(s, "Where the energy of the fall went");
            BigDecimal sum = BigDecimal.ZERO;
            for (ReportBlock.Row row : energy.rows()) {
                BigDecimal each = new BigDecimal(row.cells().get(1).replace('−', '-'));
                if (row.total()) {
                    assertThat(each).as(name).isEqualByComparingTo(sum);
                } else {
                    sum = sum.add(each);
                }
            }
            ReportBlock.Table t = Printed.table(s, "Results");
            if (r.fall().fallers().size() == 1) {
                double fallen = value(t, "Free fall") + value(t, "Deployment") + value(t, "Descent");
                double free = value(t, "Mass that falls") * G * fallen;
                assertThat(sum.doubleValue()).as(name).isCloseTo(free, within(0.001 * free + 1));
            }
            assertThat(Printed.hasRow(energy, "In-line"))
                    .as(name)
                    .isEqualTo(!r.inlineAbsorbers().isEmpty());
            assertThat(Printed.hasRow(energy, "Heat of friction"))
                    .isEqualTo(r.energy().friction() != 0);
            assertThat(Printed.hasRow(energy, "Lifting those who hang"))
                    .isEqualTo(r.energy().hanging() != 0);
            assertThat(Printed.hasRow(energy, "Elastic anchors"))
                    .isEqualTo(r.energy().anchors() != 0);
            assertThat(Printed.words(s).contains("A second way: the work of the load"))
                    .isEqualTo(r.energy().friction() != 0 && !Double.isNaN(r.pathWork()));
        });
    }

    @Test
    void inBothSystemsTheEnergiesAreTheSame() {
        ArrestResult r = arrest("sequence");
        ReportBlock.Table t =
                Printed.table(sections(r, DESIGN, UnitChoice.BOTH).get(0), "Where the energy of the fall went");
        assertThat(t.columns()).extracting(ReportBlock.Column::heading).containsExactly("Item", "J", "ft·lbf");
        double joules = 0;
        double feet = 0;
        for (ReportBlock.Row row : t.rows()) {
            // A foot-pound force is 1.355818 J; each part may be rounded up to a digit aside to add up.
            assertThat(n(row.cells(), 2) * 1.355_817_948).isCloseTo(n(row.cells(), 1), within(2.4));
            joules += row.total() ? 0 : n(row.cells(), 1);
            feet += row.total() ? 0 : n(row.cells(), 2);
        }
        assertThat(n(t.rows().get(t.rows().size() - 1).cells(), 1)).isEqualTo(joules);
        assertThat(n(t.rows().get(t.rows().size() - 1).cells(), 2)).isEqualTo(feet);
    }

    @Test
    void elevationsGoDownStepByStepToWhatMustBeFree() {
        ARRESTS.forEach((name, r) -> {
            ReportSection s = first(r);
            ReportBlock.Table steps = Printed.table(s, "From the line down");
            BigDecimal above = BigDecimal.ZERO;
            for (int i = 0; i < steps.rows().size(); i++) {
                List<String> c = steps.rows().get(i).cells();
                BigDecimal here = new BigDecimal(c.get(2).replace('−', '-'));
                if (i > 0) {
                    assertThat(above.subtract(new BigDecimal(c.get(1).replace('−', '-'))))
                            .isEqualByComparingTo(here);
                }
                assertThat(c.get(3)).as("source of %s", c.get(0)).isNotBlank();
                above = here;
            }
            ReportBlock.Table c = Printed.table(s, "Clearance");
            double line = Printed.number(steps.rows().get(0).cells().get(2));
            double below = n(Printed.row(c, "Required below the line"), 1);
            assertThat(line - below).as(name).isCloseTo(above.doubleValue(), within(0.0016));
            double level = r.clearanceWorker().walkingLevel();
            assertThat(level - n(Printed.row(c, "Required below the walking level"), 1))
                    .isCloseTo(above.doubleValue(), within(0.0011));
            if (r.clearance().margin().isPresent()) {
                double top = n(Printed.row(c, "Top of the highest obstruction"), 1);
                boolean lacking = above.doubleValue() < top;
                double margin = n(Printed.row(c, lacking ? "LACKING" : "Clearance margin"), 1);
                assertThat(margin).isCloseTo(Math.abs(above.doubleValue() - top), within(0.0011));
            } else {
                assertThat(Printed.row(c, "Obstruction below").get(1)).isEqualTo("none stated");
            }
        });
    }

    @Test
    void forcesOnSupportsHaveTheirComponentsAndCarryLineAndLoads() {
        ARRESTS.forEach((name, r) -> {
            ReportSection s = sections(r, DESIGN, UnitChoice.SI).get(1);
            ReportBlock.Table t = Printed.table(s, "Force of the line on its supports");
            double up = 0;
            double along = 0;
            for (int i = 0; i < t.rows().size(); i++) {
                List<String> c = t.rows().get(i).cells();
                double f = Math.sqrt(n(c, 2) * n(c, 2) + n(c, 3) * n(c, 3) + n(c, 4) * n(c, 4));
                assertThat(n(c, 1)).as("%s %s", name, c.get(0)).isCloseTo(f, within(0.016));
                double angle = Math.toDegrees(Math.atan2(-n(c, 4), Math.hypot(n(c, 2), n(c, 3))));
                assertThat(n(c, 5)).as("%s %s", name, c.get(0)).isCloseTo(angle, within(0.06 + 0.6 / n(c, 1)));
                up += n(c, 4);
                along += n(c, 2);
                SupportReaction reaction = r.supports().get(i);
                assertThat(n(c, 6)).isCloseTo(1000 * reaction.displacement().magnitude(), within(0.051));
                r.line()
                        .supports()
                        .get(i)
                        .capacity()
                        .ifPresent(k ->
                                assertThat(n(c, 8)).isCloseTo(k / 1000 / n(c, 1), within(0.006 * k / 1000 / n(c, 1))));
            }
            double hanging = r.fall().hanging().stream()
                    .mapToDouble(h -> h.worker().mass() * G)
                    .sum();
            double weight = r.line().weightPerLength() * cable(s);
            double rounding = 0.0051 * (t.rows().size() + 1);
            assertThat(-up)
                    .as("%s: what hangs on the supports [kN]", name)
                    .isCloseTo((weight + hanging + r.lineLoad()) / 1000, within(rounding + 1e-4));
            assertThat(along).as(name).isCloseTo(0, within(rounding));
        });
    }

    /** Stress-free length of all spans as printed [m]. */
    private static double cable(ReportSection s) {
        return Printed.table(s, "Spans at the lowest point").rows().stream()
                .mapToDouble(r -> n(r.cells(), 6))
                .sum();
    }

    @Test
    void theSafetyFactorOfTheCableIsTheRatioOfItsPrintedNumbers() {
        for (String name : List.of("gallery", "fibre", "corner")) {
            String words =
                    Printed.words(sections(arrest(name), DESIGN, UnitChoice.SI).get(1));
            List<PrintedNumber> two = PrintedNumber.of(words);
            assertThat(words).contains("minimum breaking strength with its terminations over its largest tension");
            double ratio = Double.parseDouble(words.replaceAll("(?s).* = ([0-9.]+)\\.\n", "$1"));
            assertThat(ratio).as(name).isCloseTo(two.get(0).si() / two.get(1).si(), within(0.006 * ratio));
            double strength = name.equals("fibre") ? 0.8 * 42e3 : 0.9 * 90.7e3;
            assertThat(two.get(0).si()).isCloseTo(strength, within(5.0));
        }
        assertThat(Printed.words(
                        sections(arrest("weightless"), DESIGN, UnitChoice.SI).get(1)))
                .doesNotContain("Safety factor of the cable");
    }

    @Test
    void modelFactorsMultiplyForcesAndDistancesButNotWhatIsGiven() {
        ArrestResult r = arrest("gallery");
        ReportBlock.Table t = Printed.table(sections(r, SCALED, UnitChoice.SI).get(0), "Results");
        assertThat(t.columns().get(3).heading()).isEqualTo("With model factors");
        for (String force :
                List.of("Maximum arrest force", "Force on the line", "Largest tension", "Largest load at")) {
            List<String> c = Printed.row(t, force);
            assertThat(n(c, 3)).as(force).isCloseTo(1.25 * n(c, 2), within(0.0115));
        }
        for (String length : List.of("Deployment", "Descent", "Sag at")) {
            List<String> c = Printed.row(t, length);
            assertThat(n(c, 3)).as(length).isCloseTo(1.1 * n(c, 2), within(0.0011));
        }
        List<String> total = Printed.row(t, "Total fall distance");
        double given = value(t, "Free fall") + r.harnessStretch();
        assertThat(n(total, 3))
                .as("free fall and harness carry no factor")
                .isCloseTo(given + 1.1 * (n(total, 2) - given), within(0.0022));
        for (String given1 : List.of("Free fall", "Mass", "Line at the station", "Tension for each unit")) {
            assertThat(Printed.row(t, given1).get(3)).as(given1).isEmpty();
        }
        assertThat(Printed.table(first(r), "Results").columns()).hasSize(4);
    }

    @Test
    void whoFallsAndWhoHangsIsSaidFirst() {
        ReportSection s = first(arrest("sequence"));
        assertThat(((ReportBlock.Paragraph) s.blocks().get(0)).text())
                .startsWith("Falls: second, in span 2 at station 4 m; hangs already: ")
                .endsWith("Method: " + arrest("sequence").method().label() + ".");
        assertThat(((ReportBlock.Paragraph) first(arrest("at a post")).blocks().get(0)).text())
                .contains("at post 1, on which the connection pulls");
        assertThat(((ReportBlock.Paragraph)
                                first(arrest("two together")).blocks().get(0))
                        .text())
                .startsWith("Falls: A, B, ")
                .doesNotContain("hangs");
        assertThat(s.title()).startsWith("Arrest 3: ");
    }

    @Test
    void whatBottomsOutOrIsABoundIsSaid() {
        ARRESTS.forEach((name, r) -> {
            String words = Printed.words(first(r));
            assertThat(words.contains("ATTENTION: the connecting subsystem bottoms out"))
                    .as(name)
                    .isEqualTo(r.bottomedOut());
            assertThat(words.contains(ArrestTables.BOUND)).as(name).isEqualTo(r.isBound());
        });
        assertThat(arrest("bottoms out").bottomedOut()).isTrue();
        assertThat(arrest("two together").isBound()).isTrue();
    }

    @Test
    void absorbersInTheLineShowWhatIsUsedAndWhatIsLeft() {
        ArrestResult r = arrest("gallery");
        ReportBlock.Table t = Printed.table(sections(r, DESIGN, UnitChoice.SI).get(1), "In-line energy absorbers");
        assertThat(t.rows()).hasSize(1);
        List<String> c = t.rows().get(0).cells();
        assertThat(c.get(0)).isEqualTo("south");
        if (!c.get(2).startsWith("nothing")) {
            assertThat(n(c, 1) + n(c, 2)).as("0.8 m in all").isCloseTo(0.8, within(0.0011));
        }
    }

    @Test
    void picturesAndDerivationsStandWhereTheyAreAskedFor() {
        ArrestResult r = arrest("corner");
        Quantities q = Quantities.in(UnitChoice.SI);
        ArrestSections plain = new ArrestSections(DESIGN, q);
        assertThat(plain.sections(1, r)).hasSize(2);
        List<ReportSection> drawn = plain.withPictures(true)
                .withInstalled(Statics.withDefaults().solve(r.line(), List.of()))
                .sections(1, r);
        assertThat(drawn)
                .extracting(s -> s.title().replaceAll("^Arrest 1: ", ""))
                .contains("pictures", "line and supports at the lowest point", "where numbers come from");
        assertThat(drawn.get(1).blocks())
                .as("elevation, plan of a line that turns, descent")
                .hasSize(3);
        assertThat(drawn.get(1).blocks()).allMatch(ReportBlock.Figure.class::isInstance);
        assertThat(plain.withPictures(true).sections(1, arrest("fibre")).get(1).blocks())
                .as("no plan of a straight line")
                .hasSize(2);
        ReportSection sheet = plain.calculation(7, r);
        assertThat(sheet.title()).startsWith("Calculation line by line: arrest 7, ");
        assertThat(((ReportBlock.Calculation) sheet.blocks().get(1)).steps()).hasSizeGreaterThan(20);
    }
}
