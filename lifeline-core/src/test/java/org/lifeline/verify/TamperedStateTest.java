package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.verify.Solved.failures;
import static org.lifeline.verify.Solved.free;
import static org.lifeline.verify.Solved.gripped;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Vector3;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.testing.Cases;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.StateNumbers;

/** Each check of a state is able to fail: one number of a right state is changed, and just its check finds it. */
class TamperedStateTest {
    private final Solved two = Solved.of(Cases.level().line(), gripped(1, 8, 900), gripped(1, 15, 1000));
    private final Solved spans = Solved.of(Cases.friction().line(), gripped(2, 4, 900), free(3, 3, 1000));
    private final Solved springs = Solved.of(Cases.yielding().line(), free(2, 4, 3000));
    private final Solved absorber = Solved.of(Cases.inlineAbsorber().line(), gripped(1, 5, 6000));

    @Test
    void untouchedStatesPass() {
        for (Solved each : List.of(two, spans, springs, absorber)) {
            assertThat(each.failed(each.state())).isEmpty();
        }
    }

    @Test
    void finite() {
        StateNumbers s = Changed.absorber(absorber.state(), 0, a -> Changed.with(a, "remaining", Double.NaN));

        assertThat(absorber.failed(s)).containsExactly(Check.FINITE, Check.ABSORBER_REMAINING);
    }

    @Test
    void aLoadBesideItsKink() {
        StateNumbers s =
                Changed.load(two.state(), 1, l -> Changed.with(l, "point", Changed.moved(l.point(), 1e-6, 0, 0)));

        assertThat(two.failed(s)).containsExactly(Check.LOADS);
    }

    @Test
    void aLoadOfAnotherForce() {
        StateNumbers s = Changed.load(two.state(), 1, l -> Changed.with(l, "force", 901.0));

        assertThat(two.failed(s)).containsExactly(Check.LOADS, Check.GLOBAL_EQUILIBRIUM);
    }

    @Test
    void aLoadThatIsMissing() {
        StateNumbers s = Changed.with(two.state(), "loads", two.state().loads().subList(0, 1));

        assertThat(two.failed(s)).containsExactly(Check.LOADS, Check.GLOBAL_EQUILIBRIUM);
    }

    /** The middle piece of three pulls a little harder: both joints are out of balance, by forces that cancel. */
    @Test
    void loadsOutOfBalance() {
        StateNumbers s = Changed.piece(
                two.state(),
                1,
                2,
                p -> Changed.with(
                        Changed.with(p, "startTension", Changed.pulled(p.startTension(), 1e-5)),
                        "endTension",
                        p.endTension()
                                .plus(Changed.pulled(p.startTension(), 1e-5).minus(p.startTension()))));

        assertThat(two.failed(s)).containsExactly(Check.LOAD_EQUILIBRIUM);
    }

    /** The two pieces at a joint pull a little harder at the joint only. */
    @Test
    void piecesOutOfBalance() {
        Vector3 more = Changed.pulled(two.state().span(1).firstPiece().endTension(), 1e-5)
                .minus(two.state().span(1).firstPiece().endTension());
        StateNumbers s = Changed.piece(
                two.state(),
                1,
                1,
                p -> Changed.with(p, "endTension", p.endTension().plus(more)));
        s = Changed.piece(
                s, 1, 2, p -> Changed.with(p, "startTension", p.startTension().plus(more)));

        assertThat(two.failed(s)).containsExactly(Check.PIECE_EQUILIBRIUM);
    }

    @Test
    void reactionsThatAreNotThePull() {
        Vector3 more = new Vector3(1e-3, 0, 0);
        StateNumbers s = Changed.support(
                two.state(), 0, r -> Changed.with(r, "vector", r.vector().plus(more)));
        s = Changed.support(s, 1, r -> Changed.with(r, "vector", r.vector().minus(more)));

        assertThat(two.failed(s)).containsExactly(Check.SUPPORT_REACTION);
    }

    /** Three loads, each too large by less than its own limit: only their sum shows. */
    @Test
    void theWholeLineOutOfBalance() {
        Solved three = Solved.of(Cases.level().line(), gripped(1, 5, 900), gripped(1, 12, 900), gripped(1, 18, 900));
        double more = 900 * (1 + 0.8e-9);
        StateNumbers s = three.state();
        for (int i = 1; i <= 3; i++) {
            s = Changed.load(s, i, l -> Changed.with(l, "force", more));
        }
        List<AppliedLoad> applied = List.of(gripped(1, 5, more), gripped(1, 12, more), gripped(1, 18, more));

        assertThat(failures(s, applied, three.installed())).containsExactly(Check.GLOBAL_EQUILIBRIUM);
    }

    @Test
    void cableOfAnotherWeight() {
        StateNumbers s = Changed.piece(two.state(), 1, 1, p -> Changed.with(p, "weight", p.weight() * (1 + 1e-10)));

        assertThat(two.failed(s)).containsExactly(Check.WEIGHT);
    }

    /** A joint beside where the tensions lead. */
    @Test
    void piecesThatDoNotFit() {
        StateNumbers s =
                Changed.piece(two.state(), 1, 1, p -> Changed.with(p, "end", Changed.moved(p.end(), 0, 1e-6, 0)));
        s = Changed.piece(s, 1, 2, p -> Changed.with(p, "start", Changed.moved(p.start(), 0, 1e-6, 0)));
        s = Changed.load(s, 1, l -> Changed.with(l, "point", Changed.moved(l.point(), 0, 1e-6, 0)));

        assertThat(two.failed(s)).containsExactly(Check.STRETCH);
    }

    @Test
    void aPieceBesideItsSupports() {
        StateNumbers s = Changed.piece(
                spans.state(),
                1,
                1,
                p -> Changed.with(
                        Changed.with(p, "start", Changed.moved(p.start(), 0, 1e-6, 0)),
                        "end",
                        Changed.moved(p.end(), 0, 1e-6, 0)));

        assertThat(spans.failed(s)).containsExactly(Check.CONTINUITY);
    }

    @Test
    void anAbsorberWhoseLinkIsLongerThanTheGap() {
        StateNumbers s = Changed.absorber(absorber.state(), 0, a -> Changed.with(a, "extension", a.extension() + 1e-6));

        // It stands on its stop, beyond which no force comes with such an extension either.
        assertThat(absorber.failed(s)).containsExactly(Check.CONTINUITY, Check.ABSORBER_GROWTH);
    }

    @Test
    void aSpringOfAnotherStiffness() {
        Stiffness one = springs.state().line().supports().get(1).stiffness();
        Stiffness two = springs.state().line().supports().get(2).stiffness();
        StateNumbers x = Changed.line(springs.state(), 1, p -> p.withStiffness(one.withX(one.x() * 1.001)));
        StateNumbers y = Changed.line(springs.state(), 1, p -> p.withStiffness(one.withY(one.y() * 1.001)));
        StateNumbers z = Changed.line(springs.state(), 2, p -> p.withStiffness(two.withZ(two.z() * 1.001)));

        assertThat(springs.failed(x)).containsExactly(Check.ANCHOR_SPRING);
        assertThat(springs.failed(y)).containsExactly(Check.ANCHOR_SPRING);
        assertThat(springs.failed(z)).containsExactly(Check.ANCHOR_SPRING);
    }

    @Test
    void aPieceThatEndsBesideItsSupport() {
        StateNumbers s =
                Changed.piece(spans.state(), 1, 1, p -> Changed.with(p, "end", Changed.moved(p.end(), 0, 1e-6, 0)));

        assertThat(spans.failed(s)).containsExactly(Check.STRETCH, Check.CONTINUITY);
    }

    @Test
    void aRigidAnchorThatMoves() {
        StateNumbers s = Changed.support(
                springs.state(),
                1,
                r -> Changed.with(r, "displacement", r.displacement().plus(new Vector3(0, 0, 1e-6))));

        assertThat(springs.failed(s)).containsExactly(Check.CONTINUITY, Check.ANCHOR_SPRING);
    }

    @Test
    void cableThatGotLost() {
        StateNumbers s = Changed.piece(spans.state(), 1, 1, p -> Changed.with(p, "length", p.length() * (1 - 1e-10)));

        assertThat(spans.failed(s)).containsExactly(Check.LENGTH);
    }

    @Test
    void slipThatDoesNotFitTheSpans() {
        StateNumbers s = Changed.support(spans.state(), 2, r -> Changed.with(r, "slip", r.slip() + 1e-6));

        assertThat(spans.failed(s)).containsExactly(Check.SLIP);
    }

    @Test
    void anInstalledStateOfAnotherValue() {
        for (Installed other : List.of(
                Installed.pretension(1500.01),
                Installed.horizontalTension(1500),
                Installed.initialSag(1, 0.2),
                Installed.unstretchedLength(24))) {
            StateNumbers installed =
                    Changed.with(two.installed(), "line", two.installed().line().withInstalled(other));

            assertThat(failures(two.state(), two.loads(), installed)).containsExactly(Check.INSTALLED);
        }
    }

    @Test
    void theInstalledStateHoldsForEveryForm() {
        Lifeline line = Cases.friction().line();
        StateNumbers s = spans.installed();
        double sag = Statics.withDefaults().solve(line, List.of()).span(3).sag();
        for (Installed same : List.of(
                Installed.horizontalTension(
                                s.span(2).firstPiece().startTension().horizontal())
                        .inSpan(2),
                Installed.initialSag(3, sag),
                Installed.unstretchedLength(s.length()))) {
            StateNumbers installed = Changed.with(s, "line", line.withInstalled(same));

            assertThat(failures(spans.state(), spans.loads(), installed)).isEmpty();
        }
    }

    @Test
    void tensionThatIsNotTheSameAcrossAFreePassage() {
        StateNumbers s = passage(spans.state(), 2, Passage.free());

        assertThat(spans.failed(s)).containsExactly(Check.PASSAGE_FREE);
    }

    @Test
    void tensionBeyondTheCapstanLimit() {
        StateNumbers s = passage(spans.state(), 2, Passage.friction(0.01));

        assertThat(spans.failed(s)).containsExactly(Check.PASSAGE_FRICTION);
    }

    @Test
    void slipThroughAClamp() {
        StateNumbers s = passage(spans.state(), 2, Passage.clamped());

        assertThat(spans.failed(s)).containsExactly(Check.PASSAGE_CLAMPED);
    }

    private static StateNumbers passage(StateNumbers s, int support, Passage other) {
        return Changed.line(s, support, p -> Support.intermediate(p.id(), p.position(), other));
    }

    @Test
    void aGrippedLoadIsNoFreeRunningOne() {
        assertThat(failures(two.state(), List.of(free(1, 8, 900), gripped(1, 15, 1000)), two.installed()))
                .containsExactly(Check.FREE_RUNNING);
    }

    /** The outer loads run inward against the grip; were they heavier, the cable as it hangs would let them run out. */
    @Test
    void loadsThatTouchAreHeldOnlyWhereTheyPush() {
        Solved touching = Solved.of(Cases.level().line(), free(1, 6, 900), gripped(1, 12, 1000), free(1, 18, 800));

        assertThat(touching.state().isTouch(touching.state().span(1), 1)).isTrue();
        assertThat(touching.state().isTouch(touching.state().span(1), 2)).isTrue();
        assertThat(touching.failed(touching.state())).isEmpty();
        assertThat(failures(
                        touching.state(),
                        List.of(free(1, 6, 9000), gripped(1, 12, 1000), free(1, 18, 800)),
                        touching.installed()))
                .containsExactly(Check.LOADS, Check.FREE_RUNNING);
        assertThat(failures(
                        touching.state(),
                        List.of(free(1, 6, 900), gripped(1, 12, 1000), free(1, 18, 8000)),
                        touching.installed()))
                .containsExactly(Check.LOADS, Check.FREE_RUNNING);
    }

    /** Two that touch hold each other: the tensions outside must be equal. */
    @Test
    void loadsThatTouchAndNothingHolds() {
        Solved pair = Solved.of(Cases.level().line(), free(1, 6, 900), free(1, 18, 800));

        assertThat(pair.state().isTouch(pair.state().span(1), 1)).isTrue();
        assertThat(pair.failed(pair.state())).isEmpty();
        assertThat(failures(pair.state(), List.of(gripped(1, 6, 900), free(1, 18, 800)), pair.installed()))
                .contains(Check.GRIPPED)
                .doesNotContain(Check.FREE_RUNNING);
        StateNumbers s = Changed.piece(
                pair.state(), 1, 1, p -> Changed.with(p, "endTension", Changed.pulled(p.endTension(), 1)));
        assertThat(pair.failed(s)).contains(Check.FREE_RUNNING);
    }

    /** A load that rests on a post is carried by the post; heavier, it would leave it. */
    @Test
    void loadsThatRestOnAPost() {
        Solved resting = Solved.of(Cases.climbing().line(), free(2, 5, 700));
        StateNumbers hung = Changed.load(resting.state(), 1, l -> Changed.with(l, "restsOn", Optional.empty()));

        assertThat(resting.state().loads().get(0).restsOn()).contains("post 1");
        assertThat(resting.failed(resting.state())).isEmpty();
        assertThat(resting.failed(hung)).containsExactly(Check.LOADS, Check.SUPPORT_REACTION);
        assertThat(failures(resting.state(), List.of(free(2, 5, 70_000)), resting.installed()))
                .containsExactly(Check.LOADS, Check.FREE_RUNNING);
    }

    /** A grip that is drawn to a post holds a higher tension on the far side; a free-running load there would not. */
    @Test
    void aGripThatJams() {
        Solved behind = Solved.of(Cases.plain().line(), gripped(2, 0.005, 300), gripped(1, 6, 9000));
        Solved before = Solved.of(Cases.plain().line(), gripped(1, 11.995, 300), gripped(2, 6, 9000));

        assertThat(behind.state().isTouch(behind.state().span(2), 0)).isTrue();
        assertThat(behind.failed(behind.state())).isEmpty();
        assertThat(failures(behind.state(), List.of(free(2, 0.005, 300), gripped(1, 6, 9000)), behind.installed()))
                .contains(Check.PASSAGE_FREE);
        assertThat(before.state().isTouch(before.state().span(1), 1)).isTrue();
        assertThat(before.failed(before.state())).isEmpty();
        assertThat(failures(before.state(), List.of(free(1, 11.995, 300), gripped(2, 6, 9000)), before.installed()))
                .contains(Check.PASSAGE_FREE);
    }

    @Test
    void aGrippedLoadAtAnotherPoint() {
        assertThat(failures(two.state(), List.of(gripped(1, 8.001, 900), gripped(1, 15, 1000)), two.installed()))
                .containsExactly(Check.GRIPPED);
    }

    @Test
    void tensionAboveTheCurveOfAnAbsorber() {
        assertThat(absorber.failed(absorberForce(7000))).containsExactly(Check.ABSORBER_LAW);
    }

    private StateNumbers absorberForce(double force) {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, force), new Corner(0.8, force)), 8e6, 2.2e5);
        return Changed.line(
                absorber.state(),
                0,
                p -> Support.end(p.id(), p.position()).withInlineAbsorber(InlineAbsorber.of(curve)));
    }

    @Test
    void anAbsorberThatGrewBelowItsCurve() {
        Lifeline line = Lifeline.builder()
                .cable(Cases.level().line().cable())
                .support(Support.end("a", Cases.level().line().supports().get(0).position())
                        .withInlineAbsorber(InlineAbsorber.of(
                                LoadingCurve.through(List.of(new Corner(0, 8000), new Corner(0.8, 8000)), 8e6, 2.2e5))))
                .support(Cases.level().line().supports().get(1))
                .pretension(1500)
                .build();
        Solved single = Solved.of(line, gripped(1, 8, 3500));
        LoadingCurve higher = LoadingCurve.through(List.of(new Corner(0, 9000), new Corner(0.8, 9000)), 8e6, 2.2e5);
        StateNumbers s = Changed.line(
                single.state(),
                0,
                p -> Support.end(p.id(), p.position()).withInlineAbsorber(InlineAbsorber.of(higher)));

        assertThat(single.failed(single.state())).isEmpty();
        assertThat(single.failed(s)).containsExactly(Check.ABSORBER_GROWTH);
    }

    @Test
    void extensionThatIsGivenBack() {
        StateNumbers more = absorber.state();
        StateNumbers less =
                Solved.of(Cases.inlineAbsorber().line(), gripped(1, 5, 3000)).state();
        CheckLog log = new CheckLog(java.util.Map.of());
        CableIntegration integration =
                CableIntegration.of(absorber.state().line().cable());
        AbsorberChecks.check(less, AbsorberChecks.History.after(more, true), integration, "state", log);

        assertThat(log.report().failures()).extracting(CheckResult::check).containsExactly(Check.ABSORBER_GROWTH);
    }

    @Test
    void whatRemainsOfAnAbsorber() {
        StateNumbers s = Changed.absorber(absorber.state(), 0, a -> Changed.with(a, "remaining", a.remaining() + 1e-6));

        assertThat(absorber.failed(s)).containsExactly(Check.ABSORBER_REMAINING);
    }
}
