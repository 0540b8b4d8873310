package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.base.Violation;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

class LifelineTest {
    private static final Cable CABLE =
            Cable.builder().massPerLength(0.5).axialStiffness(4.9e6).build();

    private static Lifeline.Builder threeSpans() {
        return Lifeline.builder()
                .cable(CABLE)
                .endAnchor("north", Point.of(0, 0, 12))
                .intermediateAnchor("post 1", Point.of(3, 4, 13), Passage.friction(0.1))
                .intermediateAnchor("post 2", Point.of(3, 14, 12.5), Passage.free())
                .endAnchor("south", Point.of(15, 14, 12.5))
                .pretension(1500);
    }

    @Test
    void everythingGivenComesBack() {
        Lifeline line = threeSpans().gravity(9.81).build();
        assertThat(line.cable()).isSameAs(CABLE);
        assertThat(line.supports()).extracting(Support::id).containsExactly("north", "post 1", "post 2", "south");
        assertThat(line.supports().get(1).passage().friction()).isEqualTo(0.1);
        assertThat(line.installed().value()).isEqualTo(1500);
        assertThat(line.gravity()).isEqualTo(9.81);
        assertThat(line.weightPerLength()).isEqualTo(0.5 * 9.81);
        assertThat(line.spans()).isEqualTo(3);
        assertThat(line.run(1)).isEqualTo(5);
        assertThat(line.run(2)).isEqualTo(10);
        assertThat(line.run(3)).isEqualTo(12);
        assertThat(line.rise(1)).isEqualTo(1);
        assertThat(line.rise(2)).isEqualTo(-0.5);
        assertThat(line.rise(3)).isZero();
        assertThat(line.along(Place.of(1, 2))).isEqualTo(2);
        assertThat(line.along(Place.of(3, 2))).isEqualTo(17);
        assertThat(threeSpans().build().gravity()).isEqualTo(9.80665);
        assertThatThrownBy(() -> line.supports().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void changedCopies() {
        Lifeline line = threeSpans().gravity(9.7).build();
        Lifeline other = line.withInstalled(Installed.initialSag(2, 0.1));
        assertThat(other.installed().form()).isEqualTo(Installed.Form.INITIAL_SAG);
        assertThat(other.supports()).isEqualTo(line.supports());
        assertThat(other.gravity()).isEqualTo(9.7);
        assertThat(other.cable()).isSameAs(CABLE);
        assertThat(line.installed().form()).isEqualTo(Installed.Form.PRETENSION);
    }

    @Test
    void placesOnTheLine() {
        Lifeline line = threeSpans().build();
        assertThat(line.check(Place.of(1, 2.5))).isEmpty();
        assertThat(line.check(Place.of(3, 11.999))).isEmpty();
        assertThat(line.check(Place.of(0, 1)))
                .extracting(Violation::toString)
                .containsExactly("span: 0: must be a span from 1 to 3");
        assertThat(line.check(Place.of(4, 1)))
                .extracting(Violation::toString)
                .containsExactly("span: 4: must be a span from 1 to 3");
        for (double station : new double[] {0, 5, -1, 6}) {
            assertThat(line.check(Place.of(1, station)))
                    .extracting(Violation::toString)
                    .containsExactly("station: " + station + " m: must lie inside the span, above 0 m and below 5.0 m");
        }
    }

    @Test
    void nothingGiven() {
        assertThat(Refusal.of(() -> Lifeline.builder().build()))
                .containsExactly(
                        "cable: missing: must be given",
                        "installed: missing: must be given",
                        "support: 0 supports: must have at least two");
        assertThat(Refusal.of(() -> threeSpans().gravity(0).build()))
                .containsExactly("gravity: 0.0 m/s²: must be a finite number above zero");
        assertThat(Refusal.paths(() -> threeSpans().gravity(Double.NaN).build()))
                .containsExactly("gravity");
    }

    @Test
    void supportsInTheWrongOrder() {
        assertThat(Refusal.of(() -> Lifeline.builder()
                        .cable(CABLE)
                        .pretension(1)
                        .intermediateAnchor("a", Point.of(0, 0, 0), Passage.free())
                        .endAnchor("b", Point.of(5, 0, 0))
                        .intermediateAnchor("a", Point.of(10, 0, 0), Passage.free())
                        .build()))
                .containsExactly(
                        "intermediateAnchor[0]: intermediate: the first and the last support must be end anchors",
                        "endAnchor[1]: end: only the first and the last support may be end anchors",
                        "intermediateAnchor[2]: intermediate: the first and the last support must be end anchors",
                        "intermediateAnchor[2].id: a: is the id of intermediateAnchor[0] as well");
        assertThat(Refusal.paths(() -> Lifeline.builder()
                        .cable(CABLE)
                        .pretension(1)
                        .endAnchor("a", Point.of(0, 0, 0))
                        .build()))
                .contains("support");
    }

    @Test
    void spansTooSteep() {
        double steepest = Math.tan(Math.toRadians(80));
        assertThat(Refusal.of(() -> ends(1, steepest * 1.0001)))
                .singleElement()
                .asString()
                .startsWith("endAnchor[1].position: [1.0 m, 0.0 m, ")
                .contains("the span before it must not be steeper than 80° (run 1.0 m, rise ");
        assertThat(Refusal.of(() -> ends(1, -steepest * 1.0001))).hasSize(1);
        assertThat(Refusal.of(() -> ends(0, 0))).hasSize(1);
        assertThat(Refusal.of(() -> ends(0, 5))).hasSize(1);
        assertThat(ends(1, steepest * 0.9999).rise(1)).isCloseTo(steepest * 0.9999, within(1e-15));
    }

    private static Lifeline ends(double x, double z) {
        return Lifeline.builder()
                .cable(CABLE)
                .pretension(1000)
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(x, 0, z))
                .build();
    }

    @Test
    void anInstalledStateForASpanThatIsNotThere() {
        assertThat(Refusal.of(() ->
                        threeSpans().installed(Installed.initialSag(4, 0.1)).build()))
                .containsExactly("installed.span: 4: must be a span from 1 to 3");
        assertThat(threeSpans()
                        .installed(Installed.initialSag(3, 0.1))
                        .build()
                        .installed()
                        .span())
                .isEqualTo(3);
    }

    @Test
    void designs() {
        Worker a = worker("A");
        Fall f = Fall.builder("f").at(Place.of(2, 3)).faller(a).build();
        Obstruction o = new Obstruction(0, 30, 4);
        ClearanceRules rules = ClearanceRules.commonPractice().withObstructions(List.of(o));
        LifelineDesign d = LifelineDesign.builder("Gallery")
                .line(threeSpans().build())
                .temperature(-30)
                .temperature(40)
                .worker(a)
                .fall(f)
                .clearance(rules)
                .modelFactors(new ModelFactors(1.2, 1.1))
                .build();
        assertThat(d.title()).isEqualTo("Gallery");
        assertThat(d.line().spans()).isEqualTo(3);
        assertThat(d.temperatures()).containsExactly(-30.0, 40.0);
        assertThat(d.workers()).containsExactly(a);
        assertThat(d.falls()).containsExactly(f);
        assertThat(d.clearance()).isEqualTo(rules);
        assertThat(d.modelFactors()).isEqualTo(new ModelFactors(1.2, 1.1));
    }

    @Test
    void aBareDesign() {
        LifelineDesign d = LifelineDesign.builder("")
                .line(threeSpans()
                        .installed(Installed.pretension(1000).atTemperature(7))
                        .build())
                .worker(worker("A"))
                .build();
        assertThat(d.temperatures()).containsExactly(7.0);
        assertThat(d.falls()).isEmpty();
        assertThat(d.clearance()).isEqualTo(ClearanceRules.commonPractice());
        assertThat(d.modelFactors()).isEqualTo(ModelFactors.none());
    }

    @Test
    void refusedDesigns() {
        assertThat(Refusal.of(() -> LifelineDesign.builder("x").build()))
                .containsExactly("line: missing: must be given", "worker: []: must name at least one worker");
        Worker a = worker("A");
        Fall f = Fall.builder("f")
                .at(Place.of(9, 3))
                .faller(a)
                .hanging(worker("B"), Place.of(2, 50))
                .build();
        assertThat(Refusal.of(() -> LifelineDesign.builder("x")
                        .line(threeSpans().build())
                        .temperature(-300)
                        .temperature(1000)
                        .worker(a)
                        .worker(worker("A"))
                        .fall(f)
                        .fall(Fall.builder("f").at(Place.of(1, 3)).faller(a).build())
                        .build()))
                .containsExactly(
                        "temperature[0]: -300.0 °C: must lie between absolute zero and 1000 °C",
                        "temperature[1]: 1000.0 °C: must lie between absolute zero and 1000 °C",
                        "worker[1].id: A: must not be used twice",
                        "fall[1].id: f: must not be used twice",
                        "fall[0].hanging[0].worker: B: is not among the workers of the design",
                        "fall[0].at.span: 9: must be a span from 1 to 3",
                        "fall[0].hanging[0].place.station: 50.0 m: must lie inside the span, above 0 m and below 10.0 m");
    }

    private static Worker worker(String id) {
        return Worker.builder(id)
                .mass(100)
                .walkingLevel(10)
                .connection(Connection.plainLanyard(1.5, LoadingCurve.spring(5e4)))
                .build();
    }
}
