package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lifeline.verify.Arrested.failed;
import static org.lifeline.verify.Arrested.numbers;
import static org.lifeline.verify.Solved.failures;
import static org.lifeline.verify.Solved.free;
import static org.lifeline.verify.Solved.gripped;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Installed;
import org.lifeline.model.Installed.TensioningEnd;
import org.lifeline.model.Lifeline;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.Cases;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.StateNumbers;

/** The installed state that others are compared with is itself checked, and so are the absorbers of every state of an arrest. */
class TamperedInstalledTest {
    private final Solved spans = Solved.of(Cases.friction().line(), gripped(2, 4, 900), free(3, 3, 1000));

    private static Set<Check> against(Solved solved, StateNumbers installed) {
        return failures(solved.state(), solved.loads(), installed);
    }

    @Test
    void anInstalledStateAtAnotherTemperature() {
        for (double error : new double[] {1e-6, -1e-6}) {
            StateNumbers installed = Changed.with(
                    spans.installed(), "temperature", spans.installed().temperature() + error);
            assertThat(against(spans, installed)).contains(Check.INSTALLED);
        }
    }

    /** What has moved or run since installation counts from the installed state, where it is nothing. */
    @Test
    void anInstalledStateThatHasMovedOrRun() {
        for (int support = 0; support < spans.installed().supports().size(); support++) {
            StateNumbers moved = Changed.support(
                    spans.installed(), support, r -> Changed.with(r, "displacement", new Vector3(0, 0, -1e-6)));
            assertThat(against(spans, moved)).as("support %d", support).contains(Check.INSTALLED);
            for (double slip : new double[] {1e-6, -1e-6}) {
                StateNumbers ran = Changed.support(spans.installed(), support, r -> Changed.with(r, "slip", slip));
                assertThat(against(spans, ran)).as("support %d", support).contains(Check.INSTALLED);
            }
        }
    }

    /** Installed, the tension is the same on both sides of a post, whatever its friction. */
    @Test
    void anInstalledStateWithAnotherTensionBehindAPost() {
        for (int span = 2; span <= 4; span++) {
            StateNumbers installed = Changed.piece(
                    spans.installed(),
                    span,
                    1,
                    p -> Changed.with(p, "startTension", Changed.pulled(p.startTension(), 1e-3)));
            assertThat(against(spans, installed)).as("span %d", span).contains(Check.INSTALLED);
        }
    }

    private static Solved tensioned(Installed installed) {
        Lifeline.Builder b =
                Lifeline.builder().cable(Cases.friction().line().cable()).installed(installed);
        // A corner at every post, so that friction there counts.
        double[][] places = {{0, 0}, {10, 0}, {18, 8}, {18, 16}, {8, 20}};
        for (int i = 0; i < 5; i++) {
            b.support(Cases.friction().line().supports().get(i).withPosition(Point.of(places[i][0], places[i][1], 12)));
        }
        return Solved.of(b.build(), gripped(2, 4, 900));
    }

    /** Tensioned from an end, the cable loses tension at every post by the capstan law; said of another end, it does not fit. */
    @Test
    void anInstalledStateThatWasTensionedFromAnEnd() {
        Installed even = Installed.pretension(1200);
        for (TensioningEnd end : TensioningEnd.values()) {
            Solved pulled = tensioned(even.tensionedFrom(end));
            assertThat(pulled.failed(pulled.state())).as(end.name()).isEmpty();
            double first = pulled.installed().tensionBehind(0).magnitude();
            double last = pulled.installed().endTension(4);
            assertThat(end == TensioningEnd.FIRST ? first / last : last / first).isGreaterThan(1.3);
            TensioningEnd other = end == TensioningEnd.FIRST ? TensioningEnd.LAST : TensioningEnd.FIRST;
            for (Installed said : List.of(even, even.tensionedFrom(other))) {
                StateNumbers installed = Changed.with(
                        pulled.installed(), "line", pulled.state().line().withInstalled(said));
                assertThat(against(pulled, installed))
                        .as("%s, said %s", end, said)
                        .contains(Check.INSTALLED);
            }
        }
        Solved level = tensioned(even);
        StateNumbers said = Changed.with(
                level.installed(), "line", level.state().line().withInstalled(even.tensionedFrom(TensioningEnd.FIRST)));
        assertThat(against(level, said)).contains(Check.INSTALLED);
    }

    @Test
    void anInstalledStateOfAnotherWeight() {
        StateNumbers installed =
                Changed.piece(spans.installed(), 1, 1, p -> Changed.with(p, "weight", p.weight() * (1 + 1e-10)));
        assertThat(against(spans, installed)).containsExactly(Check.WEIGHT);
    }

    @Test
    void whatRemainsOfAnAbsorberInEveryState() {
        ArrestNumbers a = numbers(Cases.inlineAbsorber());
        assertThat(failed(a)).isEmpty();
        for (String name : List.of("before", "peak")) {
            StateNumbers old = name.equals("before") ? a.before() : a.peak();
            StateNumbers s = Changed.absorber(old, 0, x -> Changed.with(x, "remaining", x.remaining() - 1e-9));
            assertThat(failed(Changed.with(a, name, s))).as(name).containsExactly(Check.ABSORBER_REMAINING);
        }
        Solved solved = Solved.of(Cases.inlineAbsorber().line(), gripped(1, 5, 6000));
        StateNumbers installed =
                Changed.absorber(solved.installed(), 0, x -> Changed.with(x, "remaining", x.remaining() - 1e-9));
        assertThat(against(solved, installed)).containsExactly(Check.ABSORBER_REMAINING);
    }

    /** Every number of a state that is none is counted. */
    @Test
    void numbersOfAStateThatAreNone() {
        StateNumbers s = spans.state();
        Point none = Point.of(12, Double.NaN, 10);
        Vector3 infinite = new Vector3(0, 0, Double.POSITIVE_INFINITY);
        for (String name : List.of("start", "end")) {
            assertThat(spans.failed(Changed.piece(s, 2, 1, p -> Changed.with(p, name, none))))
                    .contains(Check.FINITE);
        }
        for (String name : List.of("startTension", "endTension")) {
            assertThat(spans.failed(Changed.piece(s, 2, 1, p -> Changed.with(p, name, infinite))))
                    .contains(Check.FINITE);
        }
        for (String name : List.of("first", "second")) {
            StateNumbers other = Changed.with(s, "spans", Changed.at(s.spans(), 3, p -> Changed.with(p, name, none)));
            assertThat(spans.failed(other)).as(name).contains(Check.FINITE);
        }
        for (String name : List.of("vector", "displacement")) {
            assertThat(spans.failed(Changed.support(s, 1, r -> Changed.with(r, name, infinite))))
                    .as(name)
                    .contains(Check.FINITE);
        }
        assertThat(spans.failed(Changed.support(s, 2, r -> Changed.with(r, "slip", Double.NaN))))
                .contains(Check.FINITE);
        assertThat(spans.failed(Changed.load(s, 1, l -> Changed.with(l, "force", Double.NaN))))
                .contains(Check.FINITE);
        assertThat(spans.failed(Changed.load(s, 2, l -> Changed.with(l, "point", none))))
                .contains(Check.FINITE);
    }

    /** A rigid anchor that is said to have moved by next to nothing, and a soft one by next to nothing more than it has. */
    @Test
    void anAnchorMovesByItsSpringWhateverItsStiffness() {
        ArrestCase each = Cases.yielding();
        Solved solved = Solved.of(each.line(), free(2, 4, 3000));
        for (int support = 0; support < 4; support++) {
            for (int axis = 0; axis < 3; axis++) {
                Vector3 more = new Vector3(axis == 0 ? 1e-6 : 0, axis == 1 ? 1e-6 : 0, axis == 2 ? 1e-6 : 0);
                StateNumbers s = Changed.support(
                        solved.state(),
                        support,
                        r -> Changed.with(r, "displacement", r.displacement().plus(more)));
                assertThat(solved.failed(s))
                        .as("support %d, axis %d", support, axis)
                        .contains(Check.ANCHOR_SPRING, Check.CONTINUITY);
            }
        }
    }

    /** An arrest in time ends in no state of rest: it is refused, not passed. */
    @Test
    void anArrestInTimeIsRefused() {
        ArrestCase each = Cases.plain();
        ArrestResult inTime =
                TransientArrest.withDefaults().solve(each.line(), each.fall()).arrest();
        assertThatThrownBy(() -> Verifier.withDefaults().arrest(inTime))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("result.method");
    }
}
