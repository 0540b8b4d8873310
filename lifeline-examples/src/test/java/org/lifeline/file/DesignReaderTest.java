package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Limit;
import org.lifeline.design.criteria.LimitType;
import org.lifeline.design.criteria.SourceKind;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.examples.TestFiles;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Post;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.RopeClass;

/** Valid designs: every key and every alternative arrives in the model. */
class DesignReaderTest {
    private static final String GALLERY = "independent/conveyor-gallery.design.json";
    private static final String EVERYTHING = "designs/every-alternative.json";

    @Test
    void theGalleryArrivesAsItWasWritten() {
        LifelineDesign d = TestFiles.design(GALLERY).design();
        assertThat(d.title()).isEqualTo("Conveyor gallery, walkway line 2");
        Lifeline line = d.line();
        assertThat(line.gravity()).isEqualTo(9.80665);
        Cable cable = line.cable();
        assertThat(cable.name()).isEqualTo("12 mm 6x19 steel core, galvanised");
        assertThat(cable.diameter()).hasValue(0.012);
        assertThat(cable.massPerLength(9.80665)).isEqualTo(0.576);
        assertThat(cable.elongation().isLinear()).isTrue();
        assertThat(cable.elongation().initialStiffness()).isCloseTo(4.9e6, within(1e-9));
        assertThat(cable.breakingStrength()).hasValue(90.7e3);
        assertThat(cable.terminationEfficiency()).isEqualTo(0.9);
        assertThat(cable.thermalExpansion()).isEqualTo(12e-6);

        assertThat(line.supports()).extracting(Support::id).containsExactly("north", "post 1", "post 2", "south");
        Support north = line.supports().get(0);
        assertThat(north.isEnd()).isTrue();
        assertThat(north.position()).isEqualTo(Point.of(0, 0, 12.4));
        assertThat(north.capacity()).hasValue(45e3);
        assertThat(north.stiffness().isRigid()).isTrue();
        assertThat(line.supports().get(1).passage().friction()).isEqualTo(0.12);
        assertThat(line.supports().get(2).passage().kind()).isEqualTo(Passage.Kind.FREE);
        assertThat(line.supports().get(2).capacity()).isEmpty();
        Support south = line.supports().get(3);
        assertThat(south.stiffness().x()).isEqualTo(300e3);
        assertThat(south.stiffness().y()).isInfinite();
        LoadingCurve absorber = south.inlineAbsorber().orElseThrow().curve();
        assertThat(absorber.activationForce()).isEqualTo(8e3);
        assertThat(absorber.maximumExtension()).isEqualTo(0.8);
        assertThat(absorber.stopStiffness()).isEqualTo(220e3);

        assertThat(line.installed().form()).isEqualTo(Installed.Form.PRETENSION);
        assertThat(line.installed().value()).isEqualTo(1500);
        assertThat(line.installed().temperature()).isEqualTo(15);
        assertThat(d.temperatures()).containsExactly(-30.0, 15.0, 40.0);

        Worker a = d.workers().get(0);
        assertThat(a.mass()).isEqualTo(100);
        assertThat(a.walkingLevel()).isEqualTo(10.9);
        assertThat(a.attachmentHeight()).isEqualTo(1.5);
        assertThat(a.attachment()).isEqualTo(Attachment.FREE_RUNNING);
        assertThat(a.connection().kind()).isEqualTo(Connection.Kind.LANYARD_WITH_ABSORBER);
        assertThat(a.connection().tautLength(0)).isEqualTo(1.8);
        assertThat(a.connection().curve(DeploymentForce.CLEARANCE).activationForce())
                .isEqualTo(3200);
        assertThat(a.connection().curve(DeploymentForce.MAXIMUM).activationForce())
                .isEqualTo(6000);
        assertThat(a.connection().curve(DeploymentForce.MAXIMUM).slope(0)).isCloseTo(100e3, within(1e-9));
        assertThat(a.connection().curve(DeploymentForce.MAXIMUM).stopStiffness())
                .isEqualTo(200e3);
        assertThat(a.connection().maximumExtension()).isEqualTo(1.2);

        Fall fall = d.falls().get(0);
        assertThat(fall.place()).isEqualTo(Place.of(2, 6));
        assertThat(fall.fallers()).containsExactly(a);
        assertThat(fall.freeFall()).isEmpty();
        assertThat(d.clearance().harnessStretch()).isEqualTo(0.3);
        assertThat(d.clearance().margin()).isEqualTo(0.6);
        assertThat(d.clearance().obstructions()).singleElement().satisfies(o -> {
            assertThat(o.from()).isZero();
            assertThat(o.to()).isEqualTo(36);
            assertThat(o.elevation()).isEqualTo(4);
        });
        assertThat(d.modelFactors().force()).isEqualTo(1);
        assertThat(d.modelFactors().distance()).isEqualTo(1);
    }

    @Test
    void criteriaAndTextsAreKept() throws Exception {
        byte[] bytes = TestFiles.bytes(GALLERY);
        DesignFile file = TestFiles.read(bytes);
        assertThat(file.criteria())
                .extracting(Criterion::id)
                .containsExactly("us-osha-hll-factor", "client anchor limit");
        Criterion own = file.criteria().get(1);
        assertThat(own.limits()).containsExactly(new Limit("endAnchorLoad", LimitType.AT_MOST, 30e3, "N"));
        assertThat(own.source().citation()).isEqualTo("client specification 7.2");
        assertThat(own.source().kind()).isEqualTo(SourceKind.STATED);
        assertThat(file.written("workers[0].connection.absorber.maximumForce")).contains("6 kN");
        assertThat(file.written("supports[3].inlineAbsorber.curve[1][0]")).contains("0.8 m");
        assertThat(file.written("cable.terminationEfficiency")).contains("0.9");
        assertThat(file.written("cable.tensileGrade")).isEmpty();
        assertThat(file.sha256())
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
    }

    @Test
    void everyAlternativeArrives() {
        LifelineDesign d = TestFiles.design(EVERYTHING).design();
        Lifeline line = d.line();
        assertThat(line.gravity()).isEqualTo(9.81);
        Cable cable = line.cable();
        assertThat(cable.massPerLength(9.81)).isEqualTo(RopeClass.C6X19_STEEL.massPerLength(0.012));
        assertThat(cable.elongation().initialStiffness())
                .isCloseTo(105e9 * RopeClass.C6X19_STEEL.metallicArea(0.012), within(1e-6));
        // K d² R with K = 0.356 (EN 12385-4 as printed in Feyrer, Wire Ropes, Table 1.9): 90.74 kN
        assertThat(cable.breakingStrength().orElseThrow()).isCloseTo(0.356 * 144 * 1770, within(1e-6));
        assertThat(cable.thermalExpansion()).isEqualTo(12.06e-6);
        assertThat(cable.dampingTime()).hasValue(0.0004);
        Support west = line.supports().get(0);
        assertThat(west.capacity()).hasValue(44482.216152605);
        assertThat(west.stiffness().y()).isCloseTo(2000 * 4.4482216152605 / 0.0254, within(1e-6));
        assertThat(west.stiffness().z()).isEqualTo(1e6);
        assertThat(west.inlineAbsorber().orElseThrow().curve().rigidForce()).isEqualTo(6e3);
        assertThat(west.inlineAbsorber().orElseThrow().curve().stopStiffness()).isInfinite();
        assertThat(line.supports().get(3).passage().kind()).isEqualTo(Passage.Kind.CLAMPED);
        assertThat(line.installed().form()).isEqualTo(Installed.Form.INITIAL_SAG);
        assertThat(line.installed().value()).isEqualTo(0.06);
        assertThat(line.installed().span()).isEqualTo(1);
        assertThat(line.installed().temperature()).isEqualTo(15);
        assertThat(d.temperatures()).containsExactly(-10.0, 15.0);

        List<Worker> w = d.workers();
        assertThat(w.get(0).attachment()).isEqualTo(Attachment.GRIPPED);
        assertThat(w.get(0).offset()).isEqualTo(0.3048);
        assertThat(w.get(0).attachmentHeight()).isEqualTo(1.5);
        assertThat(w.get(0).connection().curve(DeploymentForce.MAXIMUM).rigidForce())
                .isEqualTo(6e3);
        assertThat(w.get(1).mass()).isEqualTo(95.2543977);
        assertThat(w.get(1).attachment()).isEqualTo(Attachment.FREE_RUNNING);
        assertThat(w.get(1).connection().kind()).isEqualTo(Connection.Kind.GIVEN_CURVE);
        assertThat(w.get(1).connection().curve(DeploymentForce.CLEARANCE).corners())
                .containsExactly(
                        new LoadingCurve.Corner(0, 0),
                        new LoadingCurve.Corner(0.05, 4e3),
                        new LoadingCurve.Corner(1.2, 5e3));
        assertThat(w.get(1).connection().curve(DeploymentForce.MAXIMUM).stopStiffness())
                .isEqualTo(150e3);
        assertThat(w.get(2).connection().kind()).isEqualTo(Connection.Kind.PLAIN_LANYARD);
        assertThat(w.get(2).connection().curve(DeploymentForce.MAXIMUM).force(0.01))
                .isCloseTo(800, within(1e-9));
        Connection device = w.get(3).connection();
        assertThat(device.kind()).isEqualTo(Connection.Kind.SELF_RETRACTING);
        assertThat(device.freeFall(1)).isCloseTo(0.6 + 0.1016, within(1e-12));
        assertThat(device.curve(DeploymentForce.CLEARANCE).activationForce()).isEqualTo(2500);
        assertThat(device.maximumExtension()).isEqualTo(1);

        assertThat(d.falls().get(0).freeFall()).hasValue(1.1);
        assertThat(d.falls().get(1).fallers()).containsExactly(w.get(1), w.get(3));
        assertThat(d.falls().get(1).hanging()).containsExactly(new Fall.Hanging(w.get(0), Place.of(4, 3.6576)));
        assertThat(d.clearance().obstructions()).hasSize(3);
        assertThat(d.clearance().obstructions().get(2).distance()).isCloseTo(1.8288, within(1e-12));
        Post post = d.line().supports().get(2).post().orElseThrow();
        assertThat(post.height()).isEqualTo(1.1);
        assertThat(post.secondMomentX()).hasValue(1840e-8);
        // 44.2 in⁴ and 42 kip·ft by the exact inch, pound and foot.
        assertThat(post.secondMomentY().orElseThrow()).isCloseTo(44.2 * Math.pow(0.0254, 4), within(1e-18));
        assertThat(post.momentOfResistanceY().orElseThrow()).isCloseTo(42e3 * 4.4482216152605 * 0.3048, within(1e-8));
        assertThat(post.eccentricity().y()).isEqualTo(-0.2);
        assertThat(d.line().supports().get(2).stiffness().x())
                .isCloseTo(3 * 210e9 * 1840e-8 / Math.pow(1.1, 3), within(1e-3));
        assertThat(d.line().supports().get(3).post().orElseThrow().hasSection()).isFalse();
        HandoverRequest handover = TestFiles.design(EVERYTHING).handover();
        assertThat(handover.structure()).isPresent();
        assertThat(handover.clearance()).isPresent();
        assertThat(handover.installation()).isPresent();
        assertThat(handover.numberOfWorkers()).isFalse();
        assertThat(d.modelFactors().force()).isEqualTo(1.1);
        Criterion wall = TestFiles.design(EVERYTHING).criteria().get(2);
        assertThat(wall.id()).isEqualTo("west wall");
        assertThat(wall.limits().get(0).quantity()).isEqualTo("supportLoad");
        assertThat(wall.limits().get(0).value()).isCloseTo(17792.886461042, within(1e-8));
        assertThat(wall.source().citation()).isEqualTo("wall calculation");
    }

    /** A limit on every demand whose limit can be written, in the unit that it has. */
    @Test
    void everyDemandCanHaveALimit() {
        for (CheckedQuantity each : CheckedQuantity.all()) {
            String limit =
                    switch (each.unit()) {
                        case "N" -> "\"5 kN\"";
                        case "m" -> "\"5 m\"";
                        case "kg" -> "\"50 kg\"";
                        default -> "5";
                    };
            String text = TestFiles.gallery(
                    "\"demand\": \"endAnchorLoad\", \"capacity\": \"30 kN\"",
                    "\"demand\": \"" + each.key() + "\", \"capacity\": " + limit);
            if (each.unit().equals("rad")) {
                assertThatThrownBy(() -> TestFiles.read(text)).hasMessageContaining("criteria[1].demand");
                continue;
            }
            Limit read = TestFiles.read(text).criteria().get(1).limits().get(0);
            assertThat(read.quantity()).isEqualTo(each.key());
            assertThat(read.value())
                    .isEqualTo(
                            switch (each.unit()) {
                                case "N" -> 5000;
                                case "kg" -> 50;
                                default -> 5;
                            });
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "\"horizontalTension\": \"400 lbf\", \"span\": 2|HORIZONTAL_TENSION|1779.2886461042|2",
                "\"horizontalTension\": \"1.5 kN\"|HORIZONTAL_TENSION|1500|1",
                "\"initialSag\": \"3 in\", \"span\": 3|INITIAL_SAG|0.0762|3",
                "\"unstretchedLength\": \"36.01 m\"|UNSTRETCHED_LENGTH|36.01|1",
                "\"pretension\": \"1500 N\"|PRETENSION|1500|1"
            })
    void everyInstalledFormArrives(String json, Installed.Form form, double value, int span) {
        Installed installed = TestFiles.read(TestFiles.gallery("\"pretension\": \"1.5 kN\"", json))
                .design()
                .line()
                .installed();
        assertThat(installed.form()).isEqualTo(form);
        assertThat(installed.value()).isEqualTo(value);
        assertThat(installed.span()).isEqualTo(span);
    }

    @Test
    void theEndFromWhichALineWasTensionedArrivesAndIsWritten() {
        DesignFile file = TestFiles.read(TestFiles.gallery(
                "\"pretension\": \"1.5 kN\"", "\"pretension\": \"1.5 kN\", \"tensionedFrom\": \"last\""));
        assertThat(file.design().line().installed().tensionedFrom()).contains(Installed.TensioningEnd.LAST);
        DesignFile again = TestFiles.read(DesignWriter.write(file.design()));
        assertThat(again.design().line().installed())
                .isEqualTo(file.design().line().installed());
    }

    /** Elastic supports that stand unloaded yield to the installed line: the south anchor by its reaction over 300 kN/m. */
    @Test
    void unloadedPositionsYield() {
        Lifeline installed = TestFiles.design(GALLERY).design().line();
        Lifeline yielded = TestFiles.read(
                        TestFiles.gallery("\"supports\":", "\"supportPositions\": \"unloaded\", \"supports\":"))
                .design()
                .line();
        double moved = installed.supports().get(3).position().x()
                - yielded.supports().get(3).position().x();
        // The pretension of 1.5 kN less what weight and sag make of it: within 2 %.
        assertThat(moved).isCloseTo(1500 / 300e3, within(1e-4));
        assertThat(yielded.supports().get(0)).isEqualTo(installed.supports().get(0));
    }

    /** A program that varies the pretension comes to the design of the file that has it: the support yields anew. */
    @Test
    void unloadedPositionsYieldAnewToAnotherPretension() {
        String soft = TestFiles.gallery("\"supports\":", "\"supportPositions\": \"unloaded\", \"supports\":")
                .replace("300 kN/m", "50 kN/m")
                .replace("1.5 kN", "6 kN");
        DesignFile file = TestFiles.read(soft);
        DesignFile want = TestFiles.read(soft.replace("6 kN\", \"temperature", "1 kN\", \"temperature"));
        assertThat(file.hasUnloadedPositions()).isTrue();
        DesignVariable pretension = DesignVariables.pretension(Interval.of(500, 9000));
        double found = x(file.following(pretension).apply(file.design(), 1000));
        assertThat(found).isCloseTo(x(want.design()), within(1e-8));
        assertThat(x(want.design()) - x(file.design())).isCloseTo(5000 / 50e3, within(1e-3));
        DesignFile installed = TestFiles.design(GALLERY);
        assertThat(installed.hasUnloadedPositions()).isFalse();
        assertThat(installed.following(pretension)).isSameAs(pretension);
    }

    private static double x(LifelineDesign design) {
        return design.line().supports().get(3).position().x();
    }

    @Test
    void aLoadElongationCurveArrives() {
        String curve = "\"loadElongation\": [[\"0 %\", \"0 kN\"], [\"0.4 %\", \"8 kN\"], [0.01, \"30 kN\"]]";
        LoadElongation law = TestFiles.read(TestFiles.gallery("\"axialStiffness\": \"4.9 MN\"", curve))
                .design()
                .line()
                .cable()
                .elongation();
        assertThat(law.corners())
                .containsExactly(
                        new LoadElongation.Corner(0, 0),
                        new LoadElongation.Corner(0.004, 8e3),
                        new LoadElongation.Corner(0.01, 30e3));
    }

    @Test
    void aWeightPerLengthArrives() {
        Cable cable = TestFiles.read(
                        TestFiles.gallery("\"massPerLength\": \"0.576 kg/m\"", "\"weightPerLength\": \"0.38 lbf/ft\""))
                .design()
                .line()
                .cable();
        assertThat(cable.weightPerLength(9.80665)).isCloseTo(5.5457, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({
        "6x19 steel core, C6X19_STEEL",
        "6x19 IWRC, C6X19_STEEL",
        "6X36 FC, C6X36_FIBRE",
        "6x7 fiber core, C6X7_FIBRE",
        "7x7, C7X7",
        "6x7 strand core, C7X7",
        "7×19, C7X19",
        "6x19M WSC, C7X19",
        "18x7 steel core, C18X7_STEEL"
    })
    void ropeClassesArrive(String text, RopeClass expected) {
        Cable cable = TestFiles.read(
                        TestFiles.gallery("\"massPerLength\": \"0.576 kg/m\"", "\"ropeClass\": \"" + text + '"'))
                .design()
                .line()
                .cable();
        assertThat(cable.massPerLength(9.80665)).isEqualTo(expected.massPerLength(0.012));
    }

    @Test
    void whatMayBeLeftOutHasTheModelsDefault() {
        String text = """
                { "format": "org.lifeline.design/1",
                  "cable": { "massPerLength": "0.5 kg/m", "axialStiffness": "5 MN" },
                  "supports": [
                    { "id": "a", "type": "end", "position": ["0 m", "0 m", "5 m"] },
                    { "id": "b", "type": "intermediate", "position": ["8 m", "0 m", "5 m"] },
                    { "id": "c", "type": "end", "position": ["16 m", "0 m", "5 m"] } ],
                  "installed": { "pretension": "1 kN" },
                  "workers": [ { "id": "w", "mass": "90 kg", "walkingLevel": "4 m",
                    "connection": { "tautLength": "1 m", "stiffness": "60 kN/m" } } ] }
                """;
        DesignFile file = TestFiles.read(text);
        LifelineDesign d = file.design();
        assertThat(d.falls()).isEmpty();
        assertThat(d.temperatures()).containsExactly(15.0);
        assertThat(d.workers().get(0).attachment()).isEqualTo(Attachment.FREE_RUNNING);
        assertThat(d.line().supports().get(1).passage()).isEqualTo(Passage.free());
        assertThat(d.clearance().margin()).isEqualTo(0.6);
        assertThat(file.criteria()).isEmpty();
        assertThat(file.written()).doesNotContainKey("installed.temperature");
    }

    @Test
    void everyDesignOfTheTestsIsRead() {
        for (String name : TestFiles.INDEPENDENT) {
            assertThat(TestFiles.design("independent/" + name + ".design.json")
                            .design()
                            .falls())
                    .as(name)
                    .isNotEmpty();
        }
        assertThat(TestFiles.design("demo-design.json").design().line().spans()).isGreaterThanOrEqualTo(3);
    }

    @Test
    void aByteOrderMarkChangesTheSumOnly() {
        byte[] bytes = ("\ufeff" + TestFiles.text(GALLERY)).getBytes(StandardCharsets.UTF_8);
        assertThat(TestFiles.read(bytes).design().title())
                .isEqualTo(TestFiles.design(GALLERY).design().title());
        assertThat(TestFiles.read(bytes).sha256())
                .isNotEqualTo(TestFiles.design(GALLERY).sha256());
    }
}
