package org.lifeline.examples.programs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.lifeline.analysis.Statics;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.handover.ClearanceTable;
import org.lifeline.examples.handover.InstallationSheet;
import org.lifeline.examples.handover.LineDataSheet;
import org.lifeline.file.DesignFile;
import org.lifeline.model.Installed;
import org.lifeline.model.LifelineDesign;

/** The programs that take a design file, with arguments. */
@Isolated("it redirects the standard output")
class DesignProgramsTest {
    @TempDir
    private Path folder;

    private String design() throws IOException {
        Path file = folder.resolve("design.json");
        Files.write(file, TestFiles.bytes("independent/silo-roof-gripped-middle.design.json"));
        return file.toString();
    }

    private static String output(Programs.Main main, String... args) throws Exception {
        PrintStream before = System.out;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
            main.run(args);
        } finally {
            System.setOut(before);
        }
        return bytes.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
    }

    @Test
    void everyProgramTakesADesignFile() throws Exception {
        String design = design();
        assertThat(output(LineEnvelope::main, design)).contains("end anchor load", "Every case was computed");
        assertThat(output(Stringing::main, design)).contains("midspan sag");
        assertThat(output(FieldReading::main, design, "1", "100 mm", "5 mm", "20 °C"))
                .contains("measured: midspan sag of span 1 100.0 mm ± 5.0 mm", "pretension now");
    }

    /** By energy balance alone a line may meet what it does not meet in time: who prints its loads or verdicts says so. */
    @Test
    void whatRestsOnTheEnergyBalanceSaysSo() throws Exception {
        String design = design();
        String whole = "WHOLE LINE, by ENERGY BALANCE; analyze looks in time as well.";
        assertThat(output(LineEnvelope::main, design)).contains(whole);
        assertThat(output(ClearanceTable::main, design)).contains(whole);
        assertThat(output(InstallationSheet::main, design)).contains(whole);
        assertThat(output(FieldReading::main, design, "1", "100 mm", "5 mm", "20 °C"))
                .contains("STATED FALLS ALONE, by ENERGY BALANCE; analyze looks at the whole line and in time.");
        assertThat(output(LineDataSheet::main, design).replaceAll("\\s+", " "))
                .contains("Arrests in time were LEFT OUT")
                .contains("by energy balance alone");
    }

    /** A stated pretension is printed as it was put in: solving for it would give back 1500.0000000000002 N. */
    @Test
    void theMedianOfTheStudyIsTheStatedPretension() {
        DesignFile file = TestFiles.design("independent/conveyor-gallery.design.json");
        LifelineDesign design = file.design();
        for (double stated : new double[] {1200, 1500, 1234.5, 3333.3}) {
            LifelineDesign d = design.withLine(design.line().withInstalled(Installed.pretension(stated)));
            assertThat(UncertainLine.variables(file.withDesign(d)).get(0).distribution())
                    .hasToString("lognormal(median " + stated + ", variation 0.15)");
        }
        LifelineDesign sagged = design.withLine(design.line().withInstalled(Installed.initialSag(1, 0.05)));
        double tension = Statics.withDefaults().solve(sagged.line(), List.of()).firstTension();
        assertThat(UncertainLine.variables(file.withDesign(sagged)).get(0).distribution())
                .hasToString("lognormal(median " + tension + ", variation 0.15)");
    }

    @Test
    void theMapIsDrawn() throws Exception {
        Path picture = folder.resolve("map.svg");
        Path file = folder.resolve("gallery.json");
        Files.write(file, TestFiles.bytes("independent/conveyor-gallery.design.json"));
        assertThat(output(TwoVariables::main, file.toString(), picture.toString(), "--stated-falls"))
                .contains("drawn:", "STATED FALLS ALONE");
        assertThat(Files.readString(picture))
                .contains(
                        "elevation of the first support [m]",
                        "pretension [kN]",
                        "all met by energy balance",
                        "cannot be analysed",
                        "STATED FALLS ALONE");
        assertThat(output(TwoVariables::main, file.toString(), "--stated-falls"))
                .contains("says nothing of us-osha-hll-factor: post 2: its capacity is not given");
    }

    @Test
    void aVariableWithItsBounds() throws Exception {
        Path file = folder.resolve("gallery.json");
        Files.write(file, TestFiles.bytes("independent/conveyor-gallery.design.json"));
        String design = file.toString();
        for (String name : List.of("pretension", "span-length", "elevation", "anchor-capacity", "deployment-force")) {
            boolean length = name.equals("span-length") || name.equals("elevation");
            String out = output(
                    SolveFor::main, design, name, length ? "11 m" : "2 kN", length ? "13 m" : "3 kN", "--stated-falls");
            assertThat(out).as(name).contains("Criteria: us-osha-hll-factor", "looked for from", "STATED FALLS ALONE");
        }
        ObjectNode small = (ObjectNode) TestFiles.tree("independent/silo-roof-gripped-middle.design.json");
        small.putArray("criteria").add("us-osha-maf");
        Path one = Files.writeString(folder.resolve("small.json"), small.toString());
        assertThat(output(SolveFor::main, one.toString(), "pretension", "2 kN", "3 kN"))
                .contains("WHOLE LINE", "Each end is then assessed in time", "from 2000.0 (bound)", " in time: ");
        assertThatThrownBy(() -> output(SolveFor::main, design, "colour", "2 kN", "3 kN"))
                .hasMessageContaining("no variable is called colour");
        assertThatThrownBy(() -> output(SolveFor::main, design, "pretension", "2 m", "3 kN"))
                .hasMessageContaining("\"2 m\" is a length");
    }

    @Test
    void aStudyWritesItsCases() throws Exception {
        Path csv = folder.resolve("cases.csv");
        String out = output(UncertainLine::main, design(), "300", csv.toString());
        assertThat(out).contains("300 cases, seed 2026, 0 failed");
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSize(301);
        assertThat(lines.get(0)).startsWith("case,pretension [N],").endsWith(",failure");
    }

    @Test
    void historiesAreWrittenAndDrawn() throws Exception {
        Path csv = folder.resolve("histories.csv");
        Path picture = folder.resolve("histories.svg");
        assertThat(output(Histories::main, design(), csv.toString(), picture.toString()))
                .contains("largest tension", "written:", "drawn:");
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSizeBetween(2900, 3005);
        String[] head = lines.get(0).split(",");
        assertThat(head[0]).isEqualTo("time [s]");
        assertThat(lines.get(0)).contains(": force [N]", ": tension before [N]", "energy: cable motion [J]");
        double before = -1;
        int energies = 0;
        for (int i = 1; i < lines.size(); i++) {
            String[] values = lines.get(i).split(",");
            assertThat(values).hasSameSizeAs(head);
            double time = Double.parseDouble(values[0]);
            assertThat(time).isGreaterThan(before);
            before = time;
            double sum = 0;
            double motion = 0;
            for (int k = 0; k < head.length; k++) {
                if (head[k].startsWith("energy:")) {
                    sum += Double.parseDouble(values[k]);
                    energies++;
                    motion += head[k].contains("worker motion") ? Double.parseDouble(values[k]) : 0;
                }
            }
            assertThat(Math.abs(sum)).as("sum of the energies at %s s", time).isLessThan(5);
            // The product of the velocities half a step before and behind passes zero where the worker turns.
            assertThat(motion).isGreaterThan(-1e-3);
        }
        assertThat(energies).isEqualTo(11 * (lines.size() - 1));
        assertThat(before).isCloseTo(3, within(2e-3));
        assertThat(Files.readString(picture))
                .contains("force [kN]", "elevation [m]", "energy [J]", "time since the start of the fall [s]");
    }

    /** A column for each of both, with the worker's force in the one and the support's in the other. */
    @Test
    void aWorkerAndASupportOfOneNameKeepTheirHistories() throws Exception {
        String text =
                new String(TestFiles.bytes("independent/silo-roof-gripped-middle.design.json"), StandardCharsets.UTF_8);
        JsonNode tree = new ObjectMapper().readTree(text);
        String worker = tree.path("workers").get(0).path("id").asText();
        String support = tree.path("supports").get(0).path("id").asText();
        Path apart = Files.writeString(folder.resolve("apart.json"), text);
        Path alike =
                Files.writeString(folder.resolve("alike.json"), text.replace('"' + worker + '"', '"' + support + '"'));
        List<List<String>> tables = new ArrayList<>();
        for (Path each : List.of(apart, alike)) {
            Path csv = folder.resolve("histories.csv");
            output(Histories::main, each.toString(), csv.toString());
            tables.add(Files.readAllLines(csv));
        }
        List<String> head = List.of(tables.get(1).get(0).split(","));
        assertThat(head)
                .doesNotHaveDuplicates()
                .contains("worker " + support + ": force [N]", "support " + support + ": force [N]");
        assertThat(tables.get(1).subList(1, tables.get(1).size()))
                .isEqualTo(tables.get(0).subList(1, tables.get(0).size()));
    }

    @Test
    void aDesignWithoutFallsHasNoHistories() throws Exception {
        Path file = folder.resolve("without.json");
        String text =
                new String(TestFiles.bytes("independent/silo-roof-gripped-middle.design.json"), StandardCharsets.UTF_8);
        int at = text.indexOf("\"falls\"");
        int end = text.lastIndexOf(']', text.indexOf("\"clearance\""));
        Files.writeString(file, text.substring(0, at) + "\"falls\": [" + text.substring(end));
        assertThatThrownBy(() -> output(Histories::main, file.toString()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("falls: none");
    }

    @Test
    void aMissingFileIsNamed() {
        assertThatThrownBy(() -> output(Stringing::main, "nowhere.json"))
                .isInstanceOf(NoSuchFileException.class)
                .hasMessageContaining("nowhere.json");
    }
}
