package org.lifeline.examples.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;
import org.lifeline.file.result.DesignRun;
import org.lifeline.report.TextReport;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.UnitChoice;

/** What {@code analyze} prints: the core's report in its short form, with the design file as it was written. */
class DesignReportTest {

    private static ReportDocument report(DesignFile file, UnitChoice units) {
        return DesignReport.of(file, DesignRun.of(file.design()), units, List.of())
                .withDetail(ReportDetail.SHORT)
                .build();
    }

    /** The report with every arrest in full. */
    private static ReportDocument full(String name, UnitChoice units) {
        DesignFile file = TestFiles.design(name);
        return DesignReport.of(file, DesignRun.of(file.design()), units, List.of())
                .withDetail(ReportDetail.FULL)
                .build();
    }

    private static String print(String name, UnitChoice units) {
        return print(TestFiles.design(name), units);
    }

    private static String print(DesignFile file, UnitChoice units) {
        return TextReport.write(report(file, units));
    }

    private static List<ReportBlock.Table> tables(ReportDocument document, String caption) {
        return document.sections().stream()
                .flatMap(s -> s.blocks().stream())
                .filter(ReportBlock.Table.class::isInstance)
                .map(ReportBlock.Table.class::cast)
                .filter(t -> t.caption().startsWith(caption))
                .toList();
    }

    private static BigDecimal number(ReportBlock.Row row, int column) {
        String cell = row.cells().get(column);
        return cell.isEmpty() ? BigDecimal.ZERO : new BigDecimal(cell.replace('−', '-'));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo-design.json",
                "designs/every-alternative.json",
                "independent/pipe-bridge-friction.design.json",
                "independent/soft-line-two-absorbers.design.json"
            })
    void printedRowsAddUpToTheLastDigit(String name) {
        ReportDocument document = full(name, UnitChoice.BOTH);
        List<ReportBlock.Table> energies = tables(document, "Where the energy of the fall went");
        assertThat(energies).hasSizeGreaterThanOrEqualTo(4);
        for (ReportBlock.Table table : energies) {
            int last = table.rows().size() - 1;
            for (int column = 1; column <= 2; column++) {
                BigDecimal sum = BigDecimal.ZERO;
                for (ReportBlock.Row row : table.rows().subList(0, last)) {
                    sum = sum.add(number(row, column));
                }
                assertThat(number(table.rows().get(last), column)).isEqualByComparingTo(sum);
            }
        }
        List<ReportBlock.Table> clearances = tables(document, "From the line down");
        assertThat(clearances).hasSameSizeAs(energies);
        for (ReportBlock.Table table : clearances) {
            for (int column = 1; column <= 3; column += 2) {
                BigDecimal z = number(table.rows().get(0), column + 1);
                for (ReportBlock.Row row : table.rows()) {
                    z = z.subtract(number(row, column));
                    assertThat(number(row, column + 1)).isEqualByComparingTo(z);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo-design.json",
                "designs/every-alternative.json",
                "independent/soft-line-two-absorbers.design.json"
            })
    void linesFitATerminalOfEightyColumns(String name) {
        for (UnitChoice units : UnitChoice.values()) {
            assertThat(print(name, units).lines())
                    .filteredOn(line -> line.codePointCount(0, line.length()) > 80)
                    .isEmpty();
        }
    }

    /** Names of the program: words in capitals joined by underscores, words with a capital inside; units are not names. */
    private static final Pattern IDENTIFIER = Pattern.compile(
            "\\b[A-Z]{2,}_[A-Z_]+\\b|\\b[a-z]{3,}[A-Z][A-Za-z]+\\b|\\bPRETENSION\\b|[a-z]+/[a-z]+\\.md");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo-design.json",
                "designs/every-alternative.json",
                "independent/one-hangs-second-falls.design.json",
                "independent/soft-line-two-absorbers.design.json"
            })
    void noNameOfTheProgramStandsInAReport(String name) {
        ReportDocument document = full(name, UnitChoice.SI);
        assertThat(TextReport.write(document).lines())
                .filteredOn(line -> IDENTIFIER.matcher(line).find())
                .isEmpty();
    }

    @Test
    void aNameOfTheProgramIsFound() {
        for (String each :
                List.of("stated PRETENSION", "clearanceMargin ≥ 0.1 m", "END_ANCHOR_LOAD", "theory/arrest.md")) {
            assertThat(IDENTIFIER.matcher(each).find()).as(each).isTrue();
        }
        for (String each : List.of("10 kN", "MET", "NOT MET", "US customary", "SHA-256", "OSHA", "z_b2")) {
            assertThat(IDENTIFIER.matcher(each).find()).as(each).isFalse();
        }
    }

    private static String given(DesignFile file, UnitChoice units) {
        return String.join(
                " ",
                tables(report(file, units), "Every value of the design file").get(0).rows().stream()
                        .map(r -> String.join(" ", r.cells()))
                        .toList());
    }

    @Test
    void inputsStandInTheUnitsInWhichTheyWereGiven() {
        assertThat(given(TestFiles.design("designs/every-alternative.json"), UnitChoice.BOTH))
                .contains("rope class 6x19 IWRC")
                .contains("tensile grade 1770 N/mm2")
                .contains("supports 1 id west; type end; position 0 ft, 0 m, 9 m; capacity 10 kip")
                .contains("stiffness y 2000 lbf/in")
                .contains("inline absorber curve (0 m, 6 kN) (0.5 m, 7 kN)")
                .contains("initial sag 60 mm; span 1; temperature 59 degF")
                .contains("temperatures -10 °C, 288.15 K")
                .contains("mass 210 lb")
                .contains("connection loading curve (0 m, 0 kN) (0.05 m, 4 kN) (1.2 m, 5 kN)")
                .contains("connection retractable brake force clearance 2.5 kN")
                .contains("fallers painter, inspector")
                .contains("hanging 1 worker fitter; hanging 1 span 4; hanging 1 station 12 ft")
                .contains("model factors force 1.1; distance 1.05");
    }

    /** Every quantity of the file is printed: nothing that was given is lost. */
    @ParameterizedTest
    @ValueSource(strings = {"demo-design.json", "designs/every-alternative.json"})
    void nothingThatWasGivenIsLost(String name) {
        DesignFile file = TestFiles.design(name);
        String given = given(file, UnitChoice.SI).replaceAll("\\s+", " ");
        String title = print(file, UnitChoice.SI).lines().findFirst().orElseThrow();
        file.written()
                .forEach((path, written) -> assertThat(given + title)
                        .as(path)
                        .contains(path.equals("format") ? "" : words(path, written).replaceAll("\\s+", " ")));
    }

    /** A quantity is printed by its words, everything else as it was written. */
    private static String words(String path, String written) {
        return path.endsWith(".demand")
                ? Quantity.of(written).map(Quantity::words).orElse(written)
                : written;
    }

    @Test
    void aLongCurveIsPrintedInFull() {
        StringBuilder curve = new StringBuilder("[\"0 %\", \"0 kN\"]");
        for (int i = 1; i <= 300; i++) {
            curve.append(", [\"")
                    .append(i * 0.01)
                    .append(" %\", \"")
                    .append(i * 0.25)
                    .append(" kN\"]");
        }
        DesignFile file = TestFiles.read(
                TestFiles.gallery("\"axialStiffness\": \"4.9 MN\"", "\"loadElongation\": [" + curve + "]"));
        String printed = print(file, UnitChoice.SI).replaceAll("\\s+", " ");
        for (int i = 1; i <= 300; i++) {
            assertThat(printed).contains(i * 0.01 + " %, " + i * 0.25 + " kN");
        }
    }

    @Test
    void resultsCarrySymbolUnitsAndFormula() {
        List<String> rows =
                tables(full("independent/silo-roof-gripped-middle.design.json", UnitChoice.BOTH), "Results").stream()
                        .flatMap(t -> t.rows().stream())
                        .map(r -> String.join(" ", r.cells()))
                        .toList();
        // Values of the independent program: h 1.891935 m, x 0.285291 m, T 24799.9 N on the maximum side.
        assertThat(rows)
                .contains("Free fall distance h 1.892 m (6.207 ft) [2]")
                .contains("Deployment (deceleration distance) x 0.285 m (0.936 ft) [3]")
                .contains("Maximum arrest force on one worker (MAF) F 6.00 kN (1349 lbf) [3]")
                .contains("Largest tension in the cable T 24.80 kN (5575 lbf) [1]");
    }

    @Test
    void cautionsComeLastAndNothingClaimsCompliance() {
        for (String name : List.of("demo-design.json", "designs/every-alternative.json")) {
            ReportDocument document = report(TestFiles.design(name), UnitChoice.BOTH);
            assertThat(document.sections().get(document.sections().size() - 1).title())
                    .isEqualTo("Cautions");
            String text = TextReport.write(document);
            assertThat(text.substring(text.lastIndexOf("Cautions")).replaceAll("\\s+", " "))
                    .contains("qualified person or licensed engineer")
                    .contains("Local codes")
                    .contains("taken out of service")
                    .contains("Rescue");
            assertThat(text.toLowerCase(Locale.ROOT))
                    .doesNotContain("complian")
                    .doesNotContain("is safe")
                    .contains("nothing in this report states that a design complies");
        }
    }

    /** The warnings on one line. */
    private static String warnings(DesignFile file, UnitChoice units) {
        ReportBlock block = report(file, units).sections().stream()
                .filter(s -> s.title().equals("Warnings"))
                .findFirst()
                .orElseThrow()
                .blocks()
                .get(0);
        return block instanceof ReportBlock.Items items ? String.join("\n", items.items()) : "";
    }

    @Test
    void whatGoesWrongIsWarnedOf() {
        DesignFile heavy = TestFiles.design("independent/heavy-worker-bottoms-out.design.json");
        assertThat(print(heavy, UnitChoice.BOTH)).contains("ATTENTION").contains("bottoms out");
        assertThat(warnings(heavy, UnitChoice.BOTH)).contains("the connecting subsystem is used up: force and distance go beyond");
        assertThat(warnings(TestFiles.design("independent/soft-line-two-absorbers.design.json"), UnitChoice.BOTH))
                .contains("is used up");
        assertThat(warnings(TestFiles.read(TestFiles.gallery("\"4.0 m\"", "\"7.0 m\"")), UnitChoice.BOTH))
                .contains("Arrests 1, 2, 3, 4, 5, 6, 7, 8, 9: the clearance margin is negative; up to")
                .contains("LACKING");
        assertThat(warnings(TestFiles.read(TestFiles.gallery("\"16 kN\"", "\"2 kN\"")), UnitChoice.BOTH))
                .contains("post 1: the load exceeds the stated capacity");
        assertThat(warnings(TestFiles.read(TestFiles.gallery("\"90.7 kN\"", "\"8 kN\"")), UnitChoice.BOTH))
                .contains("exceeds what cable and terminations hold");
        assertThat(warnings(
                        TestFiles.read(
                                TestFiles.gallery("[\"24 m\", \"0 m\", \"12.4 m\"]", "[\"24 m\", \"0 m\", \"16 m\"]")),
                        UnitChoice.SI))
                .contains("Span 2 climbs at 16.7°");
        assertThat(warnings(TestFiles.design("independent/steep-spans-traveller-rests.design.json"), UnitChoice.SI))
                .contains("the attachment runs up to 6.924 m");
        assertThat(warnings(TestFiles.design("independent/cold-store-yielding-ends.design.json"), UnitChoice.SI))
                .isEmpty();
    }

    @Test
    void whatWasNotStatedIsSaid() {
        String text = TestFiles.gallery("\"attachmentHeight\": \"1.5 m\", ", "")
                .replace(", \"temperature\": \"15 °C\"", "")
                .replace("\"passage\": \"free\"", "\"capacity\": \"9 kN\"");
        String printed = print(TestFiles.read(text), UnitChoice.SI).replaceAll("\\s+", " ");
        assertThat(printed)
                .contains("Not stated, taken: temperature of installation 15 °C.")
                .contains("Not stated, taken: harness attachment of A 1.5 m above the feet")
                .contains("Not stated, taken: the cable passes post 2 freely.");
    }

    @Test
    void modelFactorsArePrintedBesideWhatWasComputed() {
        ReportDocument document = report(TestFiles.design("designs/every-alternative.json"), UnitChoice.SI);
        ReportBlock.Table worst = tables(document, "Worst values over").get(0);
        ReportBlock.Row row = worst.rows().stream()
                .filter(r -> r.cells().get(0).contains("(MAL)"))
                .findFirst()
                .orElseThrow();
        double[] kN = Arrays.stream(new int[] {1, 2})
                .mapToDouble(i -> Double.parseDouble(row.cells().get(i).replace(" kN", "")))
                .toArray();
        assertThat(kN[1]).isCloseTo(1.1 * kN[0], within(0.011));
    }

    @Test
    void criteriaCarryRatioCaseSourceAndMark() {
        String text = report(TestFiles.design("demo-design.json"), UnitChoice.SI).sections().stream()
                .filter(section -> section.title().equals("Criteria"))
                .flatMap(section -> section.blocks().stream())
                .map(String::valueOf)
                .reduce("", String::concat);
        assertThat(text)
                .contains("us-osha-hll-factor")
                .contains("29 CFR 1926.502,")
                .contains("(d)(8)")
                .contains("published")
                .contains("MET, arrest 6")
                .contains("Value is")
                .contains("stated in");
    }
}
