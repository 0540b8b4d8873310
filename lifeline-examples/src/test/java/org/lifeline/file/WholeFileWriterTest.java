package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.base.Interval;
import org.lifeline.base.canonical.Difference;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.examples.TestFiles;
import org.lifeline.model.LifelineDesign;

/** A design file that is read, written as a whole and read again holds the same: nothing beside the design is lost. */
class WholeFileWriterTest {
    private static final Path SAMPLES = Path.of("designs");

    private static final String[] BASES = {"larger-of-both", "energy-balance", "in-time"};

    static List<String> texts() throws IOException {
        List<String> list = new ArrayList<>();
        Stream.of("demo-design.json", "designs/every-alternative.json").forEach(n -> list.add(TestFiles.text(n)));
        TestFiles.INDEPENDENT.forEach(n -> list.add(TestFiles.text("independent/" + n + ".design.json")));
        try (Stream<Path> files = Files.list(SAMPLES)) {
            for (Path each : files.filter(f -> f.toString().endsWith(".design.json"))
                    .sorted()
                    .toList()) {
                list.add(Files.readString(each));
            }
        }
        return list;
    }

    @Test
    void theSampleDesignsAreAmongThem() throws IOException {
        assertThat(texts()).hasSizeGreaterThanOrEqualTo(TestFiles.INDEPENDENT.size() + 5);
    }

    @ParameterizedTest
    @MethodSource("texts")
    void everythingThatWasReadComesBack(String text) {
        same(text, TestFiles.read(text));
    }

    /** Any basis, any handover in any units, limits of one's own and a project, on each of the designs. */
    @Test
    void whateverStandsBesideTheDesignComesBack() throws IOException {
        SplittableRandom random = new SplittableRandom(20_261_130);
        for (String text : texts()) {
            for (int i = 0; i < 12; i++) {
                ObjectNode root = (ObjectNode) TestFiles.tree(text.getBytes(StandardCharsets.UTF_8));
                root.put("basis", BASES[random.nextInt(BASES.length)]);
                root.set("project", root.objectNode().put("client", "Tidal mill " + i));
                ArrayNode criteria = root.putArray("criteria").add("us-osha-hll-factor");
                criteria.addObject()
                        .put("id", "own")
                        .put("demand", "endAnchorLoad")
                        .put("capacity", random.nextDouble(2, 20) + " kip")
                        .put("factor", random.nextDouble(1, 3));
                root.set("handover", handover(root.objectNode(), random));
                String varied = root.toString();
                same(varied, TestFiles.read(varied));
            }
        }
    }

    private static ObjectNode handover(ObjectNode node, SplittableRandom random) {
        if (random.nextBoolean()) {
            ObjectNode structure = node.putObject("structure");
            if (random.nextBoolean()) {
                structure.put("pullAngle", random.nextDouble(0, 79) + "°");
                structure
                        .putArray("factors")
                        .addObject()
                        .put("name", "ultimate")
                        .put("factor", random.nextDouble(0.5, 3))
                        .put("source", "brief of the structure");
            }
        }
        if (random.nextBoolean()) {
            node.putObject("clearanceAlongLine")
                    .put("step", random.nextDouble(0.1, 9) + " ft")
                    .put("rounding", random.nextDouble(0.1, 9) + " in");
        }
        if (random.nextBoolean()) {
            ObjectNode installation = node.putObject("installation")
                    .put("lowestTemperature", random.nextDouble(-30, 5) + " °F")
                    .put("highestTemperature", random.nextDouble(6, 50) + " °C");
            if (random.nextBoolean()) {
                installation
                        .put("handTight", random.nextDouble(10, 60) + " lbf")
                        .put("tolerance", random.nextDouble(0.5, 99) + " %");
                if (random.nextBoolean()) {
                    installation.put("constructionalStretch", random.nextBoolean() ? "steel core" : "fibre core");
                } else {
                    installation
                            .putObject("constructionalStretch")
                            .put("from", random.nextDouble(0, 0.3) + " %")
                            .put("to", random.nextDouble(0.3, 4.9) + " %")
                            .put("source", "rope maker's letter");
                }
            }
        }
        return node.put("numberOfWorkers", random.nextBoolean());
    }

    private static void same(String text, DesignFile file) {
        byte[] written = DesignWriter.write(file);
        DesignFile again = TestFiles.read(written);
        assertThat(Difference.between(
                        file.design().canonicalForm(), again.design().canonicalForm()))
                .as(text)
                .isEmpty();
        assertThat(again.design().fingerprint()).isEqualTo(file.design().fingerprint());
        assertThat(again.project()).usingRecursiveComparison().isEqualTo(file.project());
        assertThat(again.basis()).as(text).isEqualTo(file.basis());
        assertThat(again.criteria().stream().map(WholeFileWriterTest::said))
                .isEqualTo(
                        file.criteria().stream().map(WholeFileWriterTest::said).toList());
        assertThat(said(again.handover())).as(text).isEqualTo(said(file.handover()));
        assertThat(again.sha256())
                .as("written twice, the same bytes")
                .isEqualTo(TestFiles.read(DesignWriter.write(again)).sha256());
    }

    private static String said(Criterion c) {
        return c + "|" + c.limits() + "|" + c.source();
    }

    private static List<Object> said(HandoverRequest request) {
        List<Object> list = new ArrayList<>();
        list.add(request.structure().map(SupportLoads::statedAngle));
        list.add(request.structure().map(SupportLoads::factors));
        list.add(request.clearance().map(ClearanceAlongLine::steps));
        list.add(request.installation().map(InstallationPlan::request));
        list.add(request.numberOfWorkers());
        return list;
    }

    /** A program that reads a file, changes the design and writes it keeps the rest. */
    @Test
    void aChangedDesignKeepsWhatStandsBesideIt() {
        DesignFile file = TestFiles.read(TestFiles.gallery(
                "\"format\"",
                "\"basis\": \"energy-balance\", \"handover\": { \"numberOfWorkers\": true }, \"format\""));
        LifelineDesign warmer = file.design().withTemperatures(List.of(33.5));

        DesignFile again = TestFiles.read(DesignWriter.write(file.withDesign(warmer)));

        assertThat(again.design()).isEqualTo(warmer);
        assertThat(again.basis()).isEqualTo(Basis.ENERGY_BALANCE);
        assertThat(again.handover().numberOfWorkers()).isTrue();
        assertThat(again.criteria()).hasSameSizeAs(file.criteria());
        DesignFile.CriteriaChoice none =
                new DesignFile.CriteriaChoice(List.of(), Basis.IN_TIME, HandoverRequest.nothing());
        DesignFile other = TestFiles.read(DesignWriter.write(file.withCriteriaChoice(none)));
        assertThat(other.criteria()).isEmpty();
        assertThat(other.basis()).isEqualTo(Basis.IN_TIME);
        assertThat(other.handover().isEmpty()).isTrue();
    }

    /** A tolerance that differs up and down, and an angle, have no place in a file: they are refused, not left out. */
    @Test
    void whatAFileCannotSayIsRefused() {
        DesignFile file = TestFiles.design("demo-design.json");
        InstallationRequest uneven =
                new InstallationRequest(Interval.of(0, 20), 100, Interval.of(0.9, 1.2), java.util.Optional.empty());
        DesignFile asked = file.withCriteriaChoice(new DesignFile.CriteriaChoice(
                List.of(),
                Basis.LARGER_OF_BOTH,
                HandoverRequest.nothing().withInstallation(InstallationPlan.of(uneven))));
        assertThatThrownBy(() -> DesignWriter.write(asked))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("0.9 and 1.2");
        DesignFile angle = file.withCriteriaChoice(new DesignFile.CriteriaChoice(
                List.of(Criterion.stated("turn", CheckedQuantity.LINE_TURN, 0.2, "x")),
                Basis.LARGER_OF_BOTH,
                HandoverRequest.nothing()));
        assertThatThrownBy(() -> DesignWriter.write(angle))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("angle");
    }
}
