package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.examples.TestFiles;

/** Wrong designs: each violation with its path, the value as written and the rule, all of them together. */
class DesignViolationsTest {
    private static final String ABSORBER =
            "\"absorber\": { \"clearanceForce\": \"3.2 kN\", \"maximumForce\": \"6 kN\", \"maximumExtension\": \"1.2 m\","
                    + " \"initialStiffness\": \"100 kN/m\", \"stopStiffness\": \"200 kN/m\" }";
    private static final String CONNECTION = "\"tautLength\": \"1.8 m\",\n        " + ABSORBER;

    private static List<Violation> violations(String text) {
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, () -> TestFiles.read(text));
        assertThat(e).as("the design should be refused").isNotNull();
        return e.violations();
    }

    /** The gallery design with one piece of its text replaced has one violation: path, value as written, part of the rule. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                // quantities
                "\"mass\": \"100 kg\"|\"mass\": \"100\"|workers[0].mass|\"100\"|has no unit",
                "\"mass\": \"100 kg\"|\"mass\": 100|workers[0].mass|100|must be a text with a number and its unit",
                "\"mass\": \"100 kg\"|\"mass\": 1.00e2|workers[0].mass|100|must be a text with a number and its unit",
                "\"mass\": \"100 kg\"|\"mass\": \"100 N\"|workers[0].mass|\"100 N\"|must be a mass in kg, lb",
                "\"mass\": \"100 kg\"|\"mass\": \"-100 kg\"|workers[0].mass|\"-100 kg\"|above zero",
                "\"mass\": \"100 kg\"|\"mass\": \"0 kg\"|workers[0].mass|\"0 kg\"|above zero",
                "\"mass\": \"100 kg\"|\"mass\": \"NaN kg\"|workers[0].mass|\"NaN kg\"|finite",
                "\"mass\": \"100 kg\"|\"mass\": null|workers[0].mass|null|must be a text",
                "\"mass\": \"100 kg\"|\"mass\": [\"100 kg\"]|workers[0].mass|[\"100 kg\"]|must be a text",
                "\"tautLength\": \"1.8 m\"|\"tautLength\": \"-1.8 m\"|workers[0].connection.tautLength|\"-1.8 m\"|not negative",
                "\"0 m\", \"0 m\", \"12.4 m\"], \"capacity\"|\"0 m\", \"0 m\", \"12.4\"], \"capacity\"|supports[0].position[2]|\"12.4\"|has no unit",
                "\"0 m\", \"0 m\", \"12.4 m\"], \"capacity\"|\"0 m\", \"12.4 m\"], \"capacity\"|supports[0].position|[\"0 m\",\"12.4 m\"]|must be three lengths",
                "\"terminationEfficiency\": 0.9|\"terminationEfficiency\": \"0.9\"|cable.terminationEfficiency|\"0.9\"|must be a number without unit",
                "\"terminationEfficiency\": 0.9|\"terminationEfficiency\": 1.10|cable.terminationEfficiency|1.10|must be at most 1",
                "\"terminationEfficiency\": 0.9|\"terminationEfficiency\": NaN|cable.terminationEfficiency|NaN|finite",
                "\"diameter\": \"12 mm\"|\"diameter\": \"-12 mm\"|cable.diameter|\"-12 mm\"|above zero",
                "{ \"force\": 1.0|{ \"force\": -1.0|modelFactors.force|-1.0|above zero",
                "{ \"force\": 1.0|{ \"force\": 1e400|modelFactors.force|1E+400|finite",
                "[\"-30 °C\"|[\"-300 °C\"|service.temperatures[0]|\"-300 °C\"|absolute zero",
                "\"temperature\": \"15 °C\"|\"temperature\": \"-1 K\"|installed.temperature|\"-1 K\"|absolute zero",
                // structure
                "\"attachmentHeight\"|\"attachmenthight\"|workers[0].attachmenthight|\"1.5 m\"|did you mean \"attachmentHeight\"?",
                "\"title\"|\"titel\"|titel|\"Conveyor gallery, walkway line 2\"|did you mean \"title\"?",
                "\"friction\": 0.12|\"friction\": 0.12, \"colour\": 3|supports[1].passage.colour|3|unknown key; known here: friction",
                "\"id\": \"north\", |\"number\": 1, \"id\": \"north\", |supports[0].number|1|is an unknown key",
                "\"mass\": \"100 kg\", |~~|workers[0].mass|missing|must be given",
                "\"station\": \"6 m\", |\"station\": \"6 m\", \"support\": \"north\", |falls[0].support|\"north\"|give exactly one: a span with its station, or a support",
                "\"span\": 2, \"station\": \"6 m\", |~~|falls[0].span|missing|give exactly one: a span with its station, or a support",
                "\"span\": 2, \"station\": \"6 m\", |\"support\": \"nort\", |falls[0].support|\"nort\"|must be the id of a support of the line",
                "\"span\": 2, \"station\": \"6 m\", |\"support\": 3, |falls[0].support|3|must be a text",
                "\"station\": \"6 m\", |~~|falls[0].station|missing|must be given",
                "\"type\": \"end\", \"position\": [\"0 m\"|\"position\": [\"0 m\"|supports[0].type|missing|must be given",
                "org.lifeline.design/1|org.lifeline.design/2|format|\"org.lifeline.design/2\"|must be \"org.lifeline.design/1\"",
                "{ \"pretension\": \"1.5 kN\", \"temperature\": \"15 °C\" }|\"1.5 kN\"|installed|\"1.5 kN\"|must be a JSON object",
                "\"fallers\": [\"A\"]|\"fallers\": \"A\"|falls[0].fallers|\"A\"|must be a JSON array",
                "\"fallers\": [\"A\"]|\"fallers\": []|falls[0].fallers|[]|at least one worker",
                "\"fallers\": [\"A\"]|\"fallers\": [7]|falls[0].fallers[0]|7|must be a text in quotes",
                "\"passage\": \"free\"|\"passage\": \"fre\"|supports[2].passage|\"fre\"|did you mean \"free\"?",
                "\"passage\": \"free\"|\"passage\": true|supports[2].passage|true|must be \"free\", \"clamped\" or",
                "\"passage\": \"free\"|\"passage\": {}|supports[2].passage.friction|missing|must be given",
                "\"friction\": 0.12|\"friction\": 3|supports[1].passage.friction|3|from 0 to 2",
                "\"friction\": 0.12|\"friction\": -0.1|supports[1].passage.friction|-0.1|not negative",
                "\"free-running\"|\"sliding\"|workers[0].attachment|\"sliding\"|must be one of \"gripped\", \"free-running\"",
                "\"span\": 2|\"span\": 2.5|falls[0].span|2.5|whole number",
                "\"span\": 2|\"span\": 0|falls[0].span|0|whole number",
                "\"span\": 2|\"span\": \"2\"|falls[0].span|\"2\"|whole number",
                "\"passage\": \"free\"|\"post\": { \"height\": \"1 mm\", \"elasticModulus\": \"210 GPa\", \"secondMomentOfArea\": { \"x\": \"1840 cm4\" } }|supports[2].post.secondMomentOfArea.x|\"1840 cm4\"|at its height of 0.001 m",
                "\"passage\": \"free\"|\"post\": { \"height\": \"1 m\", \"elasticMomentOfResistance\": { \"y\": \"1e10 N·m\" } }|supports[2].post.elasticMomentOfResistance.y|\"1e10 N·m\"|no post of a lifeline resists",
                // alternatives
                "\"massPerLength\": \"0.576 kg/m\",|~~|cable.massPerLength|missing|exactly one of massPerLength and weightPerLength",
                "\"massPerLength\"|\"weightPerLength\": \"5 N/m\", \"massPerLength\"|cable.massPerLength|given twice|exactly one",
                "\"axialStiffness\": \"4.9 MN\",|~~|cable.axialStiffness|missing|exactly one of axialStiffness",
                "\"axialStiffness\"|\"elasticModulus\": \"1 GPa\", \"metallicArea\": \"50 mm2\", \"axialStiffness\"|cable.axialStiffness|given more than once|exactly one",
                "\"axialStiffness\": \"4.9 MN\"|\"elasticModulus\": \"100 GPa\"|cable.metallicArea|missing|together with elasticModulus",
                "\"axialStiffness\"|\"tensileGrade\": \"1770 MPa\", \"axialStiffness\"|cable.tensileGrade|\"1770 MPa\"|only together with a ropeClass",
                "\"massPerLength\": \"0.576 kg/m\"|\"ropeClass\": \"5x5\"|cable.ropeClass|\"5x5\"|not a known rope class",
                "\"axialStiffness\": \"4.9 MN\"|\"loadElongation\": [[\"0 %\", \"0 kN\"]]|cable.loadElongation|[[\"0 %\",\"0 kN\"]]|at least two corners",
                "\"axialStiffness\": \"4.9 MN\"|\"loadElongation\": []|cable.loadElongation|[]|at least two corners",
                "\"axialStiffness\": \"4.9 MN\"|\"loadElongation\": [[\"0 %\", \"0 kN\"], [\"1 %\"]]|cable.loadElongation[1]|[\"1 %\"]|must be a pair",
                "\"axialStiffness\": \"4.9 MN\"|\"loadElongation\": [[\"0 %\", \"0 kN\"], [\"1 %\", \"5 kN\"], [\"1 %\", \"6 kN\"]]|cable.loadElongation[2][0]|\"1 %\"|larger than the strain before",
                "\"pretension\": \"1.5 kN\", |~~|installed|missing|exactly one of pretension, horizontalTension",
                "\"pretension\"|\"unstretchedLength\": \"36 m\", \"pretension\"|installed|given more than once|exactly one",
                "\"pretension\": \"1.5 kN\"|\"initialSag\": \"6 cm\"|installed.span|missing|together with initialSag",
                "\"pretension\": \"1.5 kN\"|\"initialSag\": \"6 cm\", \"span\": 4|installed.span|4|from 1 to 3",
                "\"pretension\"|\"span\": 1, \"pretension\"|installed.span|1|only beside initialSag",
                // references and relations
                "\"fallers\": [\"A\"]|\"fallers\": [\"a\"]|falls[0].fallers[0]|\"a\"|did you mean \"A\"?",
                "\"fallers\": [\"A\"]|\"fallers\": [\"A\", \"A\"]|falls[0].fallers[1]|\"A\"|must not be named twice",
                "\"fallers\": [\"A\"]|\"fallers\": [\"A\"], \"hanging\": [{ \"worker\": \"B\", \"span\": 1, \"station\": \"3 m\" }]|falls[0].hanging[0].worker|\"B\"|is not the id of a worker",
                "\"fallers\": [\"A\"]|\"fallers\": [\"A\"], \"hanging\": [{ \"worker\": \"A\", \"span\": 1, \"station\": \"3 m\" }]|falls[0].hanging[0].worker|\"A\"|must not be named twice",
                "\"span\": 2|\"span\": 7|falls[0].span|7|must be a span from 1 to 3",
                "\"station\": \"6 m\"|\"station\": \"12 m\"|falls[0].station|\"12 m\"|must lie inside the span",
                "\"station\": \"6 m\"|\"station\": \"0 m\"|falls[0].station|\"0 m\"|above zero",
                "\"id\": \"post 2\"|\"id\": \"post 1\"|supports[2].id|\"post 1\"|is the id of supports[1] as well",
                "\"id\": \"post 2\"|\"id\": \" \"|supports[2].id|\" \"|must not be blank",
                "\"north\", \"type\": \"end\"|\"north\", \"type\": \"intermediate\"|supports[0].type|\"intermediate\"|must be end anchors",
                "\"post 2\", \"type\": \"intermediate\"|\"post 2\", \"type\": \"ende\"|supports[2].type|\"ende\"|did you mean \"end\"?",
                "[\"24 m\", \"0 m\", \"12.4 m\"]|[\"12 m\", \"0 m\", \"13 m\"]|supports[2].position|[\"12 m\",\"0 m\",\"13 m\"]|must not be steeper than 80°",
                "\"maximumForce\": \"6 kN\"|\"maximumForce\": \"3 kN\"|workers[0].connection.absorber.maximumForce|\"3 kN\"|must not be lower than clearanceForce",
                "[\"0.8 m\", \"8 kN\"]|[\"0.8 m\", \"7 kN\"]|supports[3].inlineAbsorber.curve[1][1]|\"7 kN\"|must not be lower than the force before it",
                "[\"0 m\", \"8 kN\"]|[\"0.1 m\", \"8 kN\"]|supports[3].inlineAbsorber.curve[0][0]|\"0.1 m\"|must start at extension 0",
                "\"to\": \"36 m\"|\"to\": \"-36 m\"|clearance.obstructions[0].to|\"-36 m\"|must not lie before from",
                // criteria
                "\"us-osha-hll-factor\"|\"us-osha-hll-facto\"|criteria[0]|\"us-osha-hll-facto\"|did you mean \"us-osha-hll-factor\"?",
                "\"us-osha-hll-factor\"|12|criteria[0]|12|must be the id of a built-in criterion",
                "\"endAnchorLoad\"|\"endAnchorForce\"|criteria[1].demand|\"endAnchorForce\"|did you mean \"endAnchorLoad\"?",
                "\"capacity\": \"30 kN\"|\"capacity\": \"30 m\"|criteria[1].capacity|\"30 m\"|must be a force",
                "\"capacity\": \"30 kN\", |~~|criteria[1].capacity|missing|must be given",
                "\"endAnchorLoad\"|\"supportLoad\", \"support\": \"west\"|criteria[1].support|\"west\"|is not the id of a support",
                "\"endAnchorLoad\"|\"endAnchorLoad\", \"support\": \"north\"|criteria[1].support|\"north\"|stands only beside",
                "\"client anchor limit\"|\"us-osha-maf\"|criteria[1].id|\"us-osha-maf\"|is the id of a built-in criterion",
            })
    void oneViolation(String what, String by, String path, String value, String rule) {
        List<Violation> found = violations(TestFiles.gallery(what, by));
        assertThat(found).as("violations").singleElement().satisfies(v -> {
            assertThat(v.path()).isEqualTo(path);
            assertThat(v.value()).isEqualTo(value);
            assertThat(v.rule()).contains(rule);
        });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "\"tautLength\": \"1.8 m\"|workers[0].connection|missing|exactly one of absorber, loadingCurve, stiffness",
                "\"tautLength\": \"1.8 m\", \"stiffness\": \"60 kN\"|workers[0].connection.stiffness|\"60 kN\"|must be a force per length",
                "\"stiffness\": \"60 kN/m\"|workers[0].connection.tautLength|missing|must be given",
                "\"tautLength\": \"1.8 m\", \"stiffness\": \"60 kN/m\", \"stopStiffness\": \"1 MN/m\"|workers[0].connection.stopStiffness|\"1 MN/m\"|only beside a loadingCurve",
                "\"tautLength\": \"1.8 m\", \"loadingCurve\": [[\"0 m\", \"0 kN\"], [\"0.5 m\", \"5 kN\"], [\"0.4 m\", \"6 kN\"]]|workers[0].connection.loadingCurve[2][0]|\"0.4 m\"|larger than the extension before",
                "\"tautLength\": \"1.8 m\", \"loadingCurve\": []|workers[0].connection.loadingCurve|[]|at least one corner",
                "\"tautLength\": \"1.8 m\", \"loadingCurve\": \"5 kN\"|workers[0].connection.loadingCurve|\"5 kN\"|must be a JSON array",
                "\"tautLength\": \"1 m\", \"retractable\": { \"lockDistance\": \"0.6 m\", \"brakeForce\": { \"clearance\": \"2 kN\", \"maximum\": \"4 kN\" }, \"maximumExtension\": \"1 m\" }|workers[0].connection.tautLength|\"1 m\"|belongs to a lanyard",
                "\"retractable\": { \"lockDistance\": \"0.6 m\", \"brakeForce\": { \"clearance\": \"5 kN\", \"maximum\": \"4 kN\" }, \"maximumExtension\": \"1 m\" }|workers[0].connection.retractable.brakeForce.maximum|\"4 kN\"|must not be lower",
                "\"retractable\": { \"brakeForce\": { \"clearance\": \"2 kN\", \"maximum\": \"4 kN\" }, \"maximumExtension\": \"1 m\" }|workers[0].connection.retractable.lockDistance|missing|must be given",
                "\"retractable\": { \"lockDistance\": \"0.6 m\", \"brakeForce\": \"4 kN\", \"maximumExtension\": \"1 m\" }|workers[0].connection.retractable.brakeForce|\"4 kN\"|must be a JSON object",
                "\"retractable\": { \"lockDistance\": \"0.6 m\", \"slack\": \"-1 cm\", \"brakeForce\": { \"clearance\": \"2 kN\", \"maximum\": \"4 kN\" }, \"maximumExtension\": \"1 m\" }|workers[0].connection.retractable.slack|\"-1 cm\"|not negative",
                "\"tautLength\": \"1 m\", \"absorber\": { \"clearanceForce\": \"3 kN\", \"maximumForce\": \"6 kN\", \"maximumExtension\": \"1 m\", \"initialStiffness\": \"1 N/m\" }|workers[0].connection.absorber.initialStiffness|\"1 N/m\"|so low that",
                "\"tautLength\": \"1 m\", \"absorber\": { \"clearanceForce\": \"3 kN\", \"maximumExtension\": \"1 m\" }|workers[0].connection.absorber.maximumForce|missing|must be given",
            })
    void oneViolationOfAConnection(String by, String path, String value, String rule) {
        oneViolation(CONNECTION, by, path, value, rule);
    }

    @Test
    void allViolationsOfAFileAreReportedTogether() {
        List<Violation> found = violations("""
                { "format": "org.lifeline.design/1", "titel": "x",
                  "cable": { "massPerLength": "0.5 lb", "axialStiffness": "5 kN/m", "diameter": "-3 mm", "diameter": "3 mm" },
                  "supports": [
                    { "id": "a", "type": "end", "position": ["0", "0 m", "5 m"] },
                    { "id": "a", "type": "end", "position": ["8 m", "0 m", "5 m"] },
                    { "id": "c", "type": "end", "position": ["16 m", "0 m", "5 m"], "passage": "free" } ],
                  "installed": { "pretension": "1 kN", "initialSag": "2 cm" },
                  "workers": [ { "id": "w", "mass": "90 lbf", "walkingLevel": "4 m", "attachment": "tied",
                      "connection": { "tautLength": "1 m", "stiffness": 60 } },
                    { "id": "w", "walkingLevel": "4 m", "connection": {} } ],
                  "falls": [ { "id": "f", "span": 9, "station": "3 m", "fallers": ["v"] }, 5 ],
                  "clearance": { "margin": "-1 m", "obstructions": [ { "from": "0 m", "to": "1 m" } ] },
                  "criteria": [ "nothing-such", { "id": "x" } ],
                  "modelFactors": { "force": "1" } }
                """);
        assertThat(found)
                .extracting(Violation::path)
                .containsExactlyInAnyOrder(
                        "titel",
                        "cable.diameter",
                        "cable.diameter",
                        "cable.massPerLength",
                        "cable.axialStiffness",
                        "supports[0].position[0]",
                        "supports[1].type",
                        "supports[1].id",
                        "supports[2].passage",
                        "installed",
                        "installed.span",
                        "workers[0].mass",
                        "workers[0].attachment",
                        "workers[0].connection.stiffness",
                        "workers[1].mass",
                        "workers[1].id",
                        "workers[1].connection",
                        "workers[1].connection.tautLength",
                        "falls[0].span",
                        "falls[0].fallers[0]",
                        "falls[1]",
                        "clearance.margin",
                        "clearance.obstructions[0].elevation",
                        "criteria[0]",
                        "criteria[1].demand",
                        "criteria[1].capacity",
                        "modelFactors.force");
        assertThat(found).allSatisfy(v -> {
            assertThat(v.value()).isNotBlank();
            assertThat(v.rule()).isNotBlank();
        });
    }

    /** Places are checked although cable and installed state are wrong. */
    @Test
    void oneFaultDoesNotHideAnother() {
        String text = TestFiles.gallery("\"4.9 MN\"", "\"4.9 MN/m\"")
                .replace("\"1.5 kN\"", "\"1.5\"")
                .replace("\"6 m\"", "\"60 m\"");
        assertThat(violations(text))
                .extracting(Violation::path)
                .containsExactly("cable.axialStiffness", "installed.pretension", "falls[0].station");
    }

    @Test
    void aRootThatIsNoObjectIsRefused() {
        assertThat(violations("[]"))
                .singleElement()
                .satisfies(v -> assertThat(v.path()).isEqualTo("file"));
        assertThat(violations("\"design\"")).hasSize(1);
    }

    @Test
    void anEmptyObjectLacksWhatMustBeGiven() {
        assertThat(violations("{}"))
                .extracting(Violation::path)
                .containsExactlyInAnyOrder("format", "cable", "supports", "installed", "workers");
    }

    @Test
    void emptyListsAreRefused() {
        String text = "{\"format\": \"org.lifeline.design/1\", \"cable\": {\"massPerLength\": \"1 kg/m\","
                + " \"axialStiffness\": \"1 MN\"}, \"supports\": [], \"installed\": {\"pretension\": \"1 kN\"},"
                + " \"workers\": []}";
        assertThat(violations(text)).extracting(Violation::path).containsExactlyInAnyOrder("supports", "workers");
    }

    @Test
    void longValuesAreCutInViolations() {
        List<Violation> found = violations(TestFiles.gallery("\"100 kg\"", '"' + "x".repeat(50_000) + '"'));
        assertThat(found).singleElement().satisfies(v -> assertThat(v.value()).hasSizeLessThan(120));
    }

    @Test
    void keysThatAreNoWordsStandInBracketsInPaths() {
        assertThat(violations(TestFiles.gallery("\"mass\"", "\"a b.c\": 1, \"mass\"")))
                .singleElement()
                .satisfies(v -> assertThat(v.path()).isEqualTo("workers[0][\"a b.c\"]"));
    }

    /** A key that is known is no unknown one because something else is wrong, and its own fault is told beside that. */
    @Test
    void howPositionsAreMeantIsReadBesideAWrongSupport() {
        String wrong = TestFiles.text("independent/conveyor-gallery.design.json")
                .replaceFirst("\"0 m\", \"0 m\", \"12.4 m\"", "\"0 m\", \"0 m\", \"12.4\"");
        assertThat(violations(wrong.replaceFirst("\"supports\"", "\"supportPositions\": \"installed\", \"supports\"")))
                .extracting(Violation::path)
                .containsExactly("supports[0].position[2]");
        assertThat(violations(wrong.replaceFirst("\"supports\"", "\"supportPositions\": \"loaded\", \"supports\"")))
                .extracting(Violation::path)
                .containsExactlyInAnyOrder("supports[0].position[2]", "supportPositions");
    }

    /** What only the whole design would notice is told together with whatever else is wrong. */
    @Test
    void whatConcernsTheWholeDesignIsToldWithTheOthers() {
        String wrong = TestFiles.text("independent/conveyor-gallery.design.json")
                .replaceFirst(
                        "\"title\": ",
                        "\"secondFall\": { \"worker\": \"Z\" }, \"rescue\": { \"rescuerMass\": \"1 kg\" }, \"title\": ")
                .replaceFirst("\"clearance\": \\{", "\"clearance\": { \"workingFloor\": \"1e9 m\",")
                .replaceFirst("\"mass\": \"100 kg\"", "\"mass\": \"100\"");
        assertThat(violations(wrong))
                .extracting(Violation::path)
                .containsExactlyInAnyOrder(
                        "secondFall.worker", "rescue.rescuerMass", "clearance.workingFloor", "workers[0].mass");
    }

    /** Paths are those of the file where the model has other names for its parts. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "\"passage\": \"free\"|\"passage\": \"free\", \"post\": { \"height\": \"1 m\", \"eccentricity\": { \"x\": \"1e9 m\" } }|supports[2].post.eccentricity.x|\"1e9 m\"",
                "\"title\"|\"handover\": { \"installation\": { \"lowestTemperature\": \"-400 °C\", \"highestTemperature\": \"30 °C\" } }, \"title\"|handover.installation.lowestTemperature|\"-400 °C\"",
                "\"title\"|\"handover\": { \"installation\": { \"lowestTemperature\": \"-4 °C\", \"highestTemperature\": \"5000 °C\" } }, \"title\"|handover.installation.highestTemperature|\"5000 °C\"",
                "\"title\"|\"handover\": { \"installation\": { \"lowestTemperature\": \"-4 °C\", \"highestTemperature\": \"30 °C\", \"constructionalStretch\": { \"from\": 0.1, \"to\": 0.2, \"source\": \"s\" } } }, \"title\"|handover.installation.constructionalStretch|{\"from\":0.1,\"to\":0.2,\"source\":\"s\"}"
            })
    void pathsAreThoseOfTheFile(String piece, String by, String path, String value) {
        String text = TestFiles.text("independent/conveyor-gallery.design.json");
        assertThat(text).contains(piece);
        List<Violation> found = violations(
                text.replaceFirst(java.util.regex.Pattern.quote(piece), java.util.regex.Matcher.quoteReplacement(by)));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).path()).isEqualTo(path);
        assertThat(found.get(0).toString()).contains(value);
    }

    @Test
    void theStiffnessOfAPlainLanyardAndTheSlackOfADeviceAreNamed() {
        String text = TestFiles.text("independent/conveyor-gallery.design.json");
        assertThat(violations(text.replace(ABSORBER, "\"stiffness\": \"1e-6 N/m\"")))
                .extracting(Violation::path)
                .containsExactly("workers[0].connection.stiffness");
        String device =
                "\"retractable\": { \"lockDistance\": \"0.6 m\", \"slack\": \"1e9 m\", \"brakeForce\": { \"clearance\": \"2.6 kN\","
                        + " \"maximum\": \"4 kN\" }, \"maximumExtension\": \"1.4 m\" }";
        assertThat(violations(text.replace(CONNECTION, device)))
                .extracting(Violation::path)
                .containsExactly("workers[0].connection.retractable.slack");
    }
}
