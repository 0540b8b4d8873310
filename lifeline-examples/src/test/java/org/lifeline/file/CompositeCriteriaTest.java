package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Limit;
import org.lifeline.design.criteria.LimitType;
import org.lifeline.design.criteria.Requirement;
import org.lifeline.examples.TestFiles;

/** Criteria of several requirements in the design file: read, written, read again. */
class CompositeCriteriaTest {
    private static final String OWN = "\"demand\": \"endAnchorLoad\", \"capacity\": \"30 kN\"";

    private static Criterion read(String json) {
        return TestFiles.read(TestFiles.gallery(OWN, json)).criteria().get(1);
    }

    @Test
    void anchorsByThemselvesWithAFactorAndPerWorker() {
        Criterion c = read(
                "\"allOf\": [ { \"eachAnchorAnyOf\": [ { \"demand\": \"anchorCapacity\", \"capacity\": \"20 kN\","
                        + " \"perWorker\": true }, { \"demand\": \"anchorStrengthFactor\", \"capacity\": 2 } ] },"
                        + " { \"demand\": \"supportLoad\", \"support\": \"post 1\", \"capacity\": \"16 kN\", \"factor\": 1.5 } ]");
        assertThat(c.limits())
                .containsExactly(
                        new Limit("anchorCapacity", LimitType.AT_LEAST, 20e3, "N per worker"),
                        new Limit("anchorStrengthFactor", LimitType.AT_LEAST, 2, "-"),
                        new Limit("1.5 × supportLoad", LimitType.AT_MOST, 16e3, "N"));
        assertThat(c.requirement().join()).isEqualTo(Requirement.Join.ALL_OF);
        assertThat(c.requirement().parts().get(0).join()).isEqualTo(Requirement.Join.EACH_ANCHOR_ANY_OF);
        assertThat(c.requirement()
                        .parts()
                        .get(1)
                        .comparison()
                        .orElseThrow()
                        .quantity()
                        .support())
                .contains("post 1");
    }

    @Test
    void alternatives() {
        Criterion c = read("\"anyOf\": [ { \"demand\": \"arrestForce\", \"capacity\": \"6 kN\" },"
                + " { \"demand\": \"freeFall\", \"capacity\": \"1.8 m\" } ]");
        assertThat(c.requirement().join()).isEqualTo(Requirement.Join.ANY_OF);
        assertThat(c.limits()).extracting(Limit::quantity).containsExactly("arrestForce", "freeFall");
        assertThat(c.source().citation()).isEqualTo("client specification 7.2");
    }

    @Test
    void whatIsWrittenIsReadAgain() {
        DesignFile file = TestFiles.read(TestFiles.gallery(
                OWN,
                "\"anyOf\": [ { \"allOf\": [ { \"demand\": \"arrestForce\", \"capacity\": \"6 kN\" }, { \"demand\":"
                        + " \"workerMass\", \"capacity\": \"140 kg\" } ] }, { \"demand\": \"anchorCapacity\", \"capacity\":"
                        + " \"22 kN\", \"perWorker\": true }, { \"demand\": \"maximumTension\", \"capacity\": \"80 kN\","
                        + " \"factor\": 2 } ]"));
        DesignFile again = TestFiles.read(DesignWriter.writeWithCriteria(file.design(), file.criteria()));
        assertThat(again.criteria())
                .extracting(Criterion::id)
                .isEqualTo(file.criteria().stream().map(Criterion::id).toList());
        for (int i = 0; i < file.criteria().size(); i++) {
            assertThat(again.criteria().get(i).limits())
                    .isEqualTo(file.criteria().get(i).limits());
            assertThat(again.criteria().get(i).title())
                    .isEqualTo(file.criteria().get(i).title());
            assertThat(again.criteria().get(i).source())
                    .isEqualTo(file.criteria().get(i).source());
        }
        Criterion builtIn = Criteria.of("us-osha-maf").orElseThrow();
        assertThat(TestFiles.read(DesignWriter.writeWithCriteria(file.design(), List.of(builtIn)))
                        .criteria()
                        .get(0)
                        .id())
                .isEqualTo("us-osha-maf");
        Criterion angle = Criterion.stated("turn", org.lifeline.design.criteria.CheckedQuantity.LINE_TURN, 0.2, "x");
        assertThatThrownBy(() -> DesignWriter.writeWithCriteria(file.design(), List.of(angle)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("angle");
    }

    @Test
    void theWorkingFloorIsReadAndWritten() {
        DesignFile file = TestFiles.read(
                TestFiles.gallery("\"margin\": \"0.6 m\"", "\"margin\": \"0.6 m\", \"workingFloor\": \"10.9 m\""));
        assertThat(file.design().workingFloor()).hasValue(10.9);
        assertThat(TestFiles.read(DesignWriter.write(file.design())).design().workingFloor())
                .hasValue(10.9);
        assertThat(TestFiles.read(TestFiles.gallery(OWN, OWN)).design().workingFloor())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "\"anyOf\": []|criteria[1].anyOf|must name at least one requirement",
                "\"anyOf\": [ { \"demand\": \"sag\", \"capacity\": \"1 m\" } ], \"allOf\": [ { \"demand\": \"sag\","
                        + " \"capacity\": \"1 m\" } ]|criteria[1].allOf|give exactly one of",
                "\"anyOf\": [ { \"demand\": \"sag\" } ]|criteria[1].anyOf[0].capacity|must be given",
                "\"anyOf\": [ { \"demand\": \"sagg\", \"capacity\": \"1 m\" } ]|criteria[1].anyOf[0].demand|must be one of",
                "\"eachAnchorAnyOf\": [ { \"demand\": \"sag\", \"capacity\": \"1 m\" }"
                        + " ]|criteria[1].eachAnchorAnyOf|must be a limit on a quantity of the anchors",
                "\"demand\": \"sag\", \"capacity\": \"1 m\", \"factor\": 2|criteria[1].factor|must be a load",
                "\"demand\": \"sag\", \"capacity\": \"1 m\", \"perWorker\": true|criteria[1].perWorker|must be a force",
                "\"demand\": \"sag\", \"capacity\": \"1 m\", \"perWorker\": 3|criteria[1].perWorker|must be one of true",
                "\"demand\": \"endAnchorLoad\", \"capacity\": \"30 kN\", \"factor\": 1e300|criteria[1].factor: 1E+300|must lie from 0.01 to 100",
                "\"demand\": \"endAnchorLoad\", \"capacity\": \"1e-300 kN\"|criteria[1].capacity: \"1e-300 kN\"|must lie from 1.0 N",
                "\"demand\": \"strengthFactor\", \"capacity\": 1e300|criteria[1].capacity: 1E+300|must lie from 1.0E-6",
                "\"anyOf\": [ { \"demand\": \"sag\", \"capacity\": \"1e9 m\" } ]|criteria[1].anyOf[0].capacity: \"1e9 m\"|must lie from",
                "\"anyOf\": [ 3 ]|criteria[1].anyOf[0]|must be a JSON object"
            })
    void mistakesAreNamed(String json, String path, String rule) {
        assertThatThrownBy(() -> read(json)).hasMessageContaining(path).hasMessageContaining(rule);
    }
}
