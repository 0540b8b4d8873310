package org.lifeline.file.reproduce;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.Method;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.ResultWriter;

/** Results of arrests in time: right ones, tampered, cut-off, older and foreign ones. */
class TransientReproductionTest {
    private static final String VERSION = "9.9-test";
    private static final DesignFile FILE = TestFiles.read("""
            {
              "format": "org.lifeline.design/1",
              "title": "Pump room, one short span",
              "cable": { "massPerLength": "0.41 kg/m", "axialStiffness": "3.3 MN" },
              "supports": [
                { "id": "a", "type": "end", "position": ["0 m", "0 m", "6 m"] },
                { "id": "b", "type": "end", "position": ["6 m", "0 m", "6 m"] }
              ],
              "installed": { "pretension": "1.5 kN", "temperature": "15 °C" },
              "workers": [
                {
                  "id": "fitter",
                  "mass": "90 kg",
                  "walkingLevel": "4.6 m",
                  "connection": {
                    "tautLength": "1.2 m",
                    "absorber": { "clearanceForce": "3.2 kN", "maximumForce": "6 kN", "maximumExtension": "1.2 m",
                      "initialStiffness": "80 kN/m", "stopStiffness": "200 kN/m" }
                  }
                }
              ],
              "falls": [{ "id": "middle", "span": 1, "station": "3 m", "fallers": ["fitter"] }],
              "criteria": ["us-osha-maf"]
            }
            """);
    private static final byte[] RESULT = result(VERSION);

    private static byte[] result(String version) {
        DesignRun run =
                DesignRun.of(FILE.design(), DesignAnalysis.withDefaults().withMethod(Method.TRANSIENT));
        return new ResultWriter(version, FILE.sha256()).write(run, CriteriaCheck.evaluate(run, FILE.criteria()));
    }

    private static ObjectNode tree() {
        return (ObjectNode) TestFiles.tree(RESULT);
    }

    private static Reproduction.Outcome check(JsonNode node) {
        try {
            return check(new ObjectMapper().writeValueAsBytes(node));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Reproduction.Outcome check(byte[] bytes) {
        return Reproduction.by(VERSION).check(FILE, bytes);
    }

    private static ObjectNode arrest(ObjectNode result) {
        return (ObjectNode) result.path("arrests").get(1);
    }

    @Test
    void ownResultsComeOutAgain() {
        Reproduction.Outcome o = check(RESULT);
        assertThat(o.verdict()).isEqualTo(Verdict.REPRODUCED);
        assertThat(o.differences()).isEmpty();
        assertThat(o.compared()).isGreaterThan(120);
        assertThat(o.stored()).hasSizeGreaterThan(30);
        assertThat(o.broken()).isEmpty();
        assertThat(o.identity()).anyMatch(l -> l.contains("transient"));
        assertThat(o.verified())
                .as("there is nothing that could be an equilibrium")
                .isEmpty();
    }

    @Test
    void aTamperedResultIsNamed() {
        ObjectNode changed = tree();
        ObjectNode run = (ObjectNode) arrest(changed).path("motion").path("wholeRun");
        run.put("maximumTensionTime", run.path("maximumTensionTime").doubleValue() + 0.01);
        Reproduction.Outcome o = check(changed);
        assertThat(o.verdict()).isEqualTo(Verdict.ALTERED);
        assertThat(o.differences())
                .extracting(Difference::path)
                .containsExactly("arrests[1].motion.wholeRun.maximumTensionTime");
    }

    @ParameterizedTest
    @ValueSource(strings = {"maximumTension", "arrestForce", "freeFall", "lineDescent", "totalFallDistance"})
    void storedNumbersContradictAChangeEvenWithoutComputing(String key) {
        ObjectNode changed = tree();
        // On a plateau a longer deployment breaks no law; a shorter one does, since the lowest point has its own.
        double factor = key.equals("deployment") ? 0.9 : 1.02;
        arrest(changed).put(key, arrest(changed).path(key).doubleValue() * factor);
        List<StoredCheck> broken = StoredNumbers.check(FILE.design(), changed).stream()
                .filter(c -> !c.holds())
                .toList();
        assertThat(broken).as(key).isNotEmpty().allMatch(c -> c.where().matches("arrests\\[1].*|governing.*"));
    }

    /** Along the plateau many deployments fit the force; a shorter one does not reach the lowest point. */
    @Test
    void aDeploymentThatDoesNotReachTheLowestPointIsContradicted() {
        ObjectNode changed = tree();
        arrest(changed).put("deployment", arrest(changed).path("deployment").doubleValue() * 0.9);
        assertThat(StoredNumbers.check(FILE.design(), changed).stream().filter(c -> !c.holds()))
                .extracting(StoredCheck::law)
                .contains("the deployment is not less than the extension at the lowest point");
    }

    @Test
    void anEnergyThatWasChangedBreaksTheAccount() {
        ObjectNode changed = tree();
        ObjectNode energy = (ObjectNode) arrest(changed).path("energy");
        energy.put("connection", energy.path("connection").doubleValue() * 0.9);
        assertThat(StoredNumbers.check(FILE.design(), changed).stream().filter(c -> !c.holds()))
                .extracting(StoredCheck::law)
                .contains("the residual is what is left over");
    }

    @Test
    void cutOffFilesAreKnown() {
        for (int part = 1; part < 10; part++) {
            assertThat(check(Arrays.copyOf(RESULT, RESULT.length * part / 10)).verdict())
                    .isEqualTo(Verdict.TRUNCATED);
        }
    }

    @Test
    void missingPartsAreKnown() {
        ObjectNode changed = tree();
        ((ObjectNode) arrest(changed).path("motion")).remove("wholeRun");
        assertThat(check(changed).verdict()).isIn(Verdict.INCOMPLETE, Verdict.ALTERED);
    }

    @Test
    void olderVersionsAndOtherProgramsAreKnown() {
        ObjectNode older = tree();
        older.put("libraryVersion", "0.0.1");
        assertThat(check(older).verdict()).isEqualTo(Verdict.OTHER_VERSION_SAME_NUMBERS);
        // An older version that met the same peaks at other times.
        ObjectNode run = (ObjectNode) arrest(older).path("motion").path("wholeRun");
        run.put("maximumTensionTime", run.path("maximumTensionTime").doubleValue() + 0.01);
        assertThat(check(older).verdict()).isEqualTo(Verdict.OTHER_VERSION);
        ObjectNode foreign = tree();
        foreign.put("format", "some.other/3");
        assertThat(check(foreign).verdict()).isEqualTo(Verdict.OTHER_PROGRAM);
    }

    @Test
    void oneArrestThatSaysAnotherMethodIsAltered() {
        ObjectNode changed = tree();
        arrest(changed).put("method", "energy balance");
        assertThat(check(changed).verdict()).isEqualTo(Verdict.ALTERED);
    }
}
