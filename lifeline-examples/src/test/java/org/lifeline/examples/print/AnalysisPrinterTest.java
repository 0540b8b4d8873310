package org.lifeline.examples.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.criteria.CriteriaCheck;
import org.lifeline.examples.json.DesignFile;

class AnalysisPrinterTest {

    private static String print(String name, UnitChoice units) {
        return print(TestFiles.design(name), units);
    }

    private static String print(DesignFile file, UnitChoice units) {
        DesignRun run = DesignRun.of(file.design());
        return new AnalysisPrinter(file, units).print(run, CriteriaCheck.evaluate(run, file.criteria()));
    }

    /** The tables whose first line starts with some words: the lines up to the end of each table. */
    private static List<List<String>> tables(String text, String head) {
        List<List<String>> tables = new ArrayList<>();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).strip().startsWith(head)) {
                List<String> table = new ArrayList<>();
                for (int k = i + 2; k < lines.size() && lines.get(k).startsWith("  "); k++) {
                    table.add(lines.get(k));
                }
                tables.add(table);
            }
        }
        return tables;
    }

    private static List<BigDecimal> numbers(String line) {
        List<BigDecimal> list = new ArrayList<>();
        for (String word : line.split("  +", -1)) {
            if (word.matches("-?[0-9]+(\\.[0-9]+)?")) {
                list.add(new BigDecimal(word));
            }
        }
        return list;
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
        String text = print(name, UnitChoice.BOTH);
        List<List<String>> energies = tables(text, "energy account");
        assertThat(energies).hasSizeGreaterThanOrEqualTo(4);
        for (List<String> table : energies) {
            BigDecimal[] sum = {BigDecimal.ZERO, BigDecimal.ZERO};
            for (int i = 0; i < 7; i++) {
                List<BigDecimal> row = numbers(table.get(i));
                assertThat(row).as(table.get(i)).hasSize(2);
                sum[0] = sum[0].add(row.get(0));
                sum[1] = sum[1].add(row.get(1));
            }
            assertThat(numbers(table.get(7))).containsExactly(sum[0], sum[1]);
        }
        for (List<String> table : tables(text, "clearance account")) {
            BigDecimal si = numbers(table.get(0)).get(0);
            BigDecimal us = numbers(table.get(0)).get(1);
            for (int i = 1; i < 7; i++) {
                List<BigDecimal> row = numbers(table.get(i));
                si = si.subtract(row.get(0));
                us = us.subtract(row.get(2));
                assertThat(row).as(table.get(i)).hasSize(4);
                assertThat(row.get(1)).isEqualTo(si);
                assertThat(row.get(3)).isEqualTo(us);
            }
        }
    }

    @Test
    void inputsStandInTheUnitsInWhichTheyWereGiven() {
        String given = print("designs/every-alternative.json", UnitChoice.BOTH);
        given = given.substring(0, given.indexOf("Formulas"));
        String flat = given.replaceAll("\\s+", " ");
        assertThat(flat)
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
        String text = print(file, UnitChoice.SI);
        String given = text.substring(0, text.indexOf("Formulas")).replaceAll("\\s+", " ");
        file.written().forEach((path, written) -> assertThat(given).as(path).contains(written.replaceAll("\\s+", " ")));
    }

    @Test
    void resultsCarrySymbolUnitsAndFormula() {
        String text = print("independent/silo-roof-gripped-middle.design.json", UnitChoice.BOTH);
        // Values of the independent program: h 1.891935 m, x 0.285291 m, T 24799.9 N on the maximum side.
        assertThat(text.replaceAll(" +", " "))
                .contains("free fall distance h 1.892 m 6.21 ft [2]")
                .contains("deployment (deceleration distance) x 0.285 m 0.94 ft [3]")
                .contains("maximum arrest force, on one worker F 6.00 kN 1349 lbf [3]")
                .contains("maximum tension of the cable T 24.80 kN 5575 lbf [1]")
                .contains("M g (h + δ + x) = W + E");
    }

    @Test
    void cautionsComeLastAndNothingClaimsCompliance() {
        for (String name : List.of("demo-design.json", "designs/every-alternative.json")) {
            String text = print(name, UnitChoice.BOTH);
            String last = text.substring(text.lastIndexOf("\n9  "));
            assertThat(last)
                    .contains("Cautions")
                    .contains("qualified person or licensed engineer")
                    .contains("local code")
                    .contains("taken out of service")
                    .contains("Rescue");
            assertThat(text.toLowerCase(Locale.ROOT))
                    .doesNotContain("complian")
                    .doesNotContain("complies")
                    .doesNotContain("is safe");
        }
    }

    @Test
    void whatGoesWrongIsWarnedOf() {
        assertThat(print("independent/heavy-worker-bottoms-out.design.json", UnitChoice.BOTH))
                .contains("THE CONNECTING SUBSYSTEM BOTTOMED OUT")
                .contains("  ! fall \"bay 1 gripped\", 20.0 °C, clearance deployment force: the connecting subsystem");
        assertThat(print("independent/soft-line-two-absorbers.design.json", UnitChoice.BOTH))
                .contains("is used up");
        assertThat(print(TestFiles.read(TestFiles.gallery("\"4.0 m\"", "\"7.0 m\"")), UnitChoice.BOTH))
                .contains("the clearance does not suffice; missing")
                .contains("MISSING");
        assertThat(print(TestFiles.read(TestFiles.gallery("\"16 kN\"", "\"2 kN\"")), UnitChoice.BOTH))
                .contains("the load on post 1 of")
                .contains("exceeds its stated capacity");
        assertThat(print(TestFiles.read(TestFiles.gallery("\"90.7 kN\"", "\"8 kN\"")), UnitChoice.BOTH))
                .contains("exceeds what cable and terminations hold");
        assertThat(print(
                        TestFiles.read(
                                TestFiles.gallery("[\"24 m\", \"0 m\", \"12.4 m\"]", "[\"24 m\", \"0 m\", \"16 m\"]")),
                        UnitChoice.SI))
                .contains("span 2 climbs at 16.7°");
        assertThat(print("independent/steep-spans-traveller-rests.design.json", UnitChoice.SI))
                .contains("the attachment runs 5.19 m along the span");
        assertThat(print("independent/cold-store-yielding-ends.design.json", UnitChoice.SI))
                .doesNotContain("  ! ");
    }

    @Test
    void whatWasNotStatedIsSaid() {
        String text = TestFiles.gallery("\"attachmentHeight\": \"1.5 m\", ", "")
                .replace(", \"temperature\": \"15 °C\"", "")
                .replace("\"passage\": \"free\"", "\"capacity\": \"9 kN\"");
        String printed = print(TestFiles.read(text), UnitChoice.SI).replaceAll("\\s+", " ");
        assertThat(printed)
                .contains("Not stated, taken: temperature of installation 15.0 °C.")
                .contains("Not stated, taken: harness attachment of A 1.500 m above the feet")
                .contains("Not stated, taken: the cable passes post 2 freely.");
    }

    @Test
    void modelFactorsArePrintedBesideWhatWasComputed() {
        String text = print("designs/every-alternative.json", UnitChoice.SI);
        assertThat(text).contains("Model factors: force 1.1, distance 1.05").contains("factored");
        String row = text.lines()
                .filter(l -> l.strip().startsWith("end anchor load  "))
                .findFirst()
                .orElseThrow();
        double[] kN = java.util.Arrays.stream(row.split("  +", -1))
                .filter(w -> w.endsWith(" kN"))
                .mapToDouble(w -> Double.parseDouble(w.replace(" kN", "")))
                .toArray();
        assertThat(kN[1]).isCloseTo(1.1 * kN[0], within(0.011));
    }
}
