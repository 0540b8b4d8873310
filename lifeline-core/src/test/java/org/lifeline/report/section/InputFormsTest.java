package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.Printed;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** Inputs of every form are written as they were given, in their own words and units. */
class InputFormsTest {
    private static ReportSection section(LifelineDesign design, UnitChoice units, String title) {
        return new InputSections(design, Quantities.in(units))
                .sections(false).stream()
                        .filter(s -> s.title().equals(title))
                        .findFirst()
                        .orElseThrow();
    }

    private static LifelineDesign installed(Installed how) {
        return LifelineDesign.builder("i")
                .line(SampleDesigns.single(SampleDesigns.steel(), how))
                .worker(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .build();
    }

    private static ReportBlock.Table cable(LifelineDesign design, UnitChoice units) {
        return Printed.table(section(design, units, "Cable and installation"), "Cable and installed state");
    }

    @Test
    void theFormOfInstallationIsNamedWithItsValue() {
        List<Installed> forms = List.of(
                Installed.pretension(1500),
                Installed.horizontalTension(3000),
                Installed.initialSag(1, 0.08),
                Installed.unstretchedLength(10.4));
        List<List<String>> rows = List.of(
                List.of("Installed: tension at the first end anchor", "1.5 kN"),
                List.of("Installed: horizontal tension in span 1", "3 kN"),
                List.of("Installed: initial sag of span 1", "0.08 m"),
                List.of("Installed: unstretched length of the cable", "10.4 m"));
        for (int i = 0; i < forms.size(); i++) {
            ReportBlock.Table t = cable(installed(forms.get(i)), UnitChoice.SI);
            assertThat(Printed.row(t, "Installed")).isEqualTo(rows.get(i));
        }
    }

    @Test
    void theCableIsSaidInFullAndInCustomaryUnitsExactlyConverted() {
        LifelineDesign design = installed(Installed.pretension(1500));
        ReportBlock.Table si = cable(design, UnitChoice.SI);
        ReportBlock.Table us = cable(design, UnitChoice.US_CUSTOMARY);
        assertThat(Printed.row(si, "Name").get(1)).isEqualTo("12 mm 6x19 steel core, galvanised");
        assertThat(Printed.row(si, "Nominal diameter").get(1)).isEqualTo("12 mm");
        assertThat(Printed.row(si, "Mass per length").get(1)).isEqualTo("0.576 kg/m");
        assertThat(Printed.row(si, "Weight per length w").get(1)).isEqualTo("5.64863 N/m");
        assertThat(Printed.row(si, "Axial stiffness EA").get(1)).isEqualTo("4900 kN");
        assertThat(Printed.row(si, "Minimum breaking strength").get(1)).isEqualTo("90.7 kN");
        assertThat(Printed.row(si, "Minimum breaking strength times").get(1)).isEqualTo("81.63 kN");
        assertThat(Printed.row(si, "Termination efficiency").get(1)).isEqualTo("0.9");
        assertThat(Printed.row(si, "Acceleration of gravity").get(1)).isEqualTo("9.80665 m/s²");
        assertThat(Printed.number(Printed.row(us, "Nominal diameter").get(1)) * 25.4)
                .isCloseTo(12, within(1e-5));
        assertThat(Printed.number(Printed.row(us, "Minimum breaking strength").get(1)) * 4.448_221_615_260_5)
                .isCloseTo(90_700, within(0.01));
        assertThat(Printed.number(Printed.row(us, "Mass per length").get(1)) * 0.453_592_37 / 0.3048)
                .isCloseTo(0.576, within(1e-6));
        assertThat(Printed.number(Printed.row(us, "Weight per length w").get(1)) * 4.448_221_615_260_5 / 0.3048)
                .isCloseTo(5.64863, within(1e-5));
        // Per degree Fahrenheit is five ninths of per degree Celsius.
        assertThat(Printed.number(Printed.row(us, "Thermal expansion").get(1)))
                .isCloseTo(
                        5.0
                                / 9
                                * Printed.number(
                                        Printed.row(si, "Thermal expansion").get(1)),
                        within(1e-11));
        assertThat(Printed.row(us, "Temperature of installation").get(1)).isEqualTo("59 °F");
    }

    @Test
    void aCableByItsCurveHasItsCornersInATable() {
        LifelineDesign design = LifelineDesign.builder("i")
                .line(SampleDesigns.single(SampleDesigns.fibre(), Installed.pretension(900)))
                .temperature(-30)
                .temperature(40)
                .worker(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .build();
        ReportSection s = section(design, UnitChoice.SI, "Cable and installation");
        ReportBlock.Table curve = Printed.table(s, "Load–elongation curve");
        assertThat(curve.rows())
                .extracting(ReportBlock.Row::cells)
                .containsExactly(
                        List.of("0 %", "0 kN"),
                        List.of("2 %", "1.2 kN"),
                        List.of("5 %", "6 kN"),
                        List.of("9 %", "18 kN"));
        ReportBlock.Table t = cable(design, UnitChoice.SI);
        // 1.2 kN at 2 %.
        assertThat(Printed.row(t, "Axial stiffness at the start of its curve").get(1))
                .isEqualTo("60 kN");
        assertThat(Printed.row(t, "Temperatures in service").get(1)).isEqualTo("−30 °C; 40 °C");
        assertThat(Printed.hasRow(t, "Nominal diameter")).isFalse();
        assertThat(Printed.tables(section(installed(Installed.pretension(1)), UnitChoice.SI, "Cable and installation")))
                .as("no curve of a linear cable")
                .hasSize(1);
    }

    @Test
    void supportsSayHowTheyHoldAndHowTheyYield() {
        ReportSection s = section(SampleDesigns.design("d"), UnitChoice.SI, "Supports");
        ReportBlock.Table t = Printed.table(s, "Supports in the order");
        assertThat(Printed.row(t, "north").subList(5, 8)).containsExactly("held", "rigid", "45 kN");
        assertThat(Printed.row(t, "post 1").get(5)).contains("0.12");
        assertThat(Printed.row(t, "south").subList(5, 8)).containsExactly("held", "x: 300 kN/m", "not stated");
        ReportBlock.Table absorber = Printed.table(s, "In-line energy absorber at south");
        assertThat(absorber.rows())
                .extracting(ReportBlock.Row::cells)
                .as("a force from the start rises within a millimetre: 8 kN over 8000 kN/m")
                .startsWith(List.of("0 m", "0 kN"), List.of("0.001 m", "8 kN"), List.of("0.8 m", "8 kN"))
                .endsWith(List.of("beyond", "stop of 220 kN/m"));
    }

    @Test
    void stiffnessIsSaidByItsFiniteDirections() {
        Lifeline line = Lifeline.builder()
                .cable(SampleDesigns.steel())
                .support(Support.end("a", Point.of(0, 0, 10))
                        .withStiffness(Stiffness.rigid().withX(4e5).withZ(2.5e5)))
                .support(Support.intermediate("b", Point.of(8, 0, 10), Passage.clamped())
                        .withStiffness(Stiffness.rigid().withY(1e5)))
                .endAnchor("c", Point.of(16, 0, 10))
                .pretension(1000)
                .build();
        ReportBlock.Table t = Printed.table(
                section(
                        installed(Installed.pretension(1)).toBuilder()
                                .line(line)
                                .build(),
                        UnitChoice.SI,
                        "Supports"),
                "Supports in the order");
        assertThat(t.rows())
                .extracting(r -> r.cells().get(6))
                .containsExactly("x: 400 kN/m; z: 250 kN/m", "y: 100 kN/m", "rigid");
        assertThat(t.rows())
                .extracting(r -> r.cells().get(1))
                .containsExactly("end anchor", "intermediate anchor", "end anchor");
    }

    @Test
    void connectionsOfEveryKindAreNamedWithTheirCurves() {
        LifelineDesign design = LifelineDesign.builder("i")
                .line(SampleDesigns.gallery())
                .worker(SampleDesigns.worker("absorber", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .worker(SampleDesigns.worker(
                        "plain",
                        90,
                        Attachment.FREE_RUNNING,
                        Connection.plainLanyard(1.5, LoadingCurve.spring(60_000))))
                .worker(SampleDesigns.worker(
                        "block",
                        80,
                        Attachment.GRIPPED,
                        Connection.selfRetracting(
                                0.6,
                                Connection.PersonalAbsorber.builder()
                                        .clearanceForce(2500)
                                        .maximumForce(4500)
                                        .maximumExtension(1)
                                        .build())))
                .build();
        ReportSection s = section(design, UnitChoice.SI, "Workers and connecting subsystems");
        ReportBlock.Table t = Printed.table(s, "Workers");
        assertThat(t.rows())
                .extracting(r -> r.cells().get(5))
                .containsExactly("lanyard with energy absorber", "lanyard without absorber", "self-retracting device");
        assertThat(t.rows()).extracting(r -> r.cells().get(6)).containsExactly("1.8 m", "1.5 m", "locks after 0.6 m");
        assertThat(t.rows()).extracting(r -> r.cells().get(4)).containsExactly("gripped", "free-running", "gripped");
        assertThat(Printed.tables(s))
                .extracting(ReportBlock.Table::caption)
                .containsExactly(
                        "Workers",
                        "Connecting subsystem of absorber, clearance deployment force: force against extension",
                        "Connecting subsystem of absorber, maximum deployment force: force against extension",
                        "Connecting subsystem of plain: force against extension",
                        "Connecting subsystem of block, clearance deployment force: force against extension",
                        "Connecting subsystem of block, maximum deployment force: force against extension");
        ReportBlock.Table low = Printed.tables(s).get(1);
        ReportBlock.Table high = Printed.tables(s).get(2);
        assertThat(low.rows())
                .extracting(r -> r.cells().get(1))
                .contains("3.2 kN")
                .doesNotContain("6 kN");
        assertThat(high.rows())
                .extracting(r -> r.cells().get(1))
                .contains("6 kN")
                .doesNotContain("3.2 kN");
        assertThat(InputSections.kind(Connection.Kind.GIVEN_CURVE)).isEqualTo("lanyard with a given loading curve");
    }

    @Test
    void fallsSayWhereWhoFallsAndWhoHangs() {
        Worker a = SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard());
        Worker b = SampleDesigns.worker("B", 85, Attachment.GRIPPED, SampleDesigns.lanyard());
        LifelineDesign design = LifelineDesign.builder("i")
                .line(SampleDesigns.gallery())
                .worker(a)
                .worker(b)
                .fall(Fall.builder("both")
                        .at(Place.of(2, 4))
                        .faller(a)
                        .faller(b)
                        .build())
                .fall(Fall.builder("post")
                        .at(Place.atSupport("post 1"))
                        .faller(a)
                        .hanging(b, Place.of(1, 3))
                        .freeFall(1.25)
                        .build())
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(0, 18, 4), new Obstruction(18, 30, 5.5, 2))))
                .build();
        ReportSection s = section(design, UnitChoice.SI, "Falls and clearance");
        assertThat(Printed.table(s, "Falls").rows())
                .extracting(ReportBlock.Row::cells)
                .containsExactly(
                        List.of("both", "2", "4 m", "A, B", "nobody", "from geometry"),
                        List.of("post", "–", "at post 1", "A", "B in span 1 at 3 m", "1.25 m"));
        ReportBlock.Table c = Printed.table(s, "Clearance");
        assertThat(Printed.row(c, "Obstruction from 0 m"))
                .containsExactly("Obstruction from 0 m to 18 m along the line", "top at 4 m");
        assertThat(Printed.row(c, "Obstruction from 18 m"))
                .containsExactly("Obstruction from 18 m to 30 m along the line, 2 m beside it", "top at 5.5 m");
        assertThat(Printed.hasRow(c, "Harness stretch")).isTrue();
        assertThat(Printed.words(section(installed(Installed.pretension(1)), UnitChoice.SI, "Falls and clearance")))
                .contains("No falls are named; the analysis chose the places.");
    }

    @Test
    void hostileNamesAreInertAndABlankOneIsLeftOut() {
        String bad = "a\u202Eb\nc";
        LifelineDesign design = LifelineDesign.builder("i")
                .line(SampleDesigns.single(
                        Cable.builder()
                                .name(bad)
                                .massPerLength(0.5)
                                .axialStiffness(4e6)
                                .build(),
                        Installed.pretension(1000)))
                .worker(SampleDesigns.worker(bad, 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .build();
        assertThat(Printed.row(cable(design, UnitChoice.SI), "Name").get(1)).doesNotContain("\u202E", "\n");
        assertThat(Printed.table(section(design, UnitChoice.SI, "Workers and connecting subsystems"), "Workers")
                        .rows()
                        .get(0)
                        .cells()
                        .get(0))
                .doesNotContain("\u202E", "\n");
        LifelineDesign nameless = LifelineDesign.builder("i")
                .line(SampleDesigns.single(
                        Cable.builder().massPerLength(0.5).axialStiffness(4e6).build(), Installed.pretension(1000)))
                .worker(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .build();
        assertThat(Printed.hasRow(cable(nameless, UnitChoice.SI), "Name")).isFalse();
    }
}
