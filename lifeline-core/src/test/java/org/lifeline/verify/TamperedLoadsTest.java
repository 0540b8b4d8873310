package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.verify.Solved.failures;
import static org.lifeline.verify.Solved.free;
import static org.lifeline.verify.Solved.gripped;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.Cases;
import org.lifeline.verify.state.StateNumbers;

/** What hangs on a line, and what the line weighs: one number of a right state is changed, and just its check finds it. */
class TamperedLoadsTest {
    private static final Lifeline YIELDING = Cases.yielding().line();

    private static AppliedLoad atSupport(int support, double force) {
        String id = YIELDING.supports().get(support).id();
        return new AppliedLoad(Place.atSupport(id), Attachment.GRIPPED, force);
    }

    private final Solved posts = Solved.of(YIELDING, free(2, 4, 3000), atSupport(1, 2000));
    private final Solved two = Solved.of(Cases.level().line(), gripped(1, 8, 900), gripped(1, 15, 1000));

    /** The load that hangs at a support in a line whose supports yield: it moves with the support. */
    @Test
    void aLoadAtASupportPassesAtEverySupport() {
        for (int support = 0; support < YIELDING.supports().size(); support++) {
            Solved each = Solved.of(YIELDING, free(2, 4, 3000), atSupport(support, 2000));
            assertThat(each.failed(each.state())).as("support %d", support).isEmpty();
        }
    }

    @Test
    void aLoadBesideItsSupport() {
        for (int axis = 0; axis < 3; axis++) {
            double[] d = {axis == 0 ? 1e-6 : 0, axis == 1 ? 1e-6 : 0, axis == 2 ? 1e-6 : 0};
            StateNumbers s = Changed.load(
                    posts.state(), 2, l -> Changed.with(l, "point", Changed.moved(l.point(), d[0], d[1], d[2])));
            assertThat(posts.failed(s)).as("axis %d", axis).containsExactly(Check.LOADS);
        }
    }

    /** Reactions of both posts made to fit: still it hangs at the one that was asked for. */
    @Test
    void aLoadThatIsSaidToRestOnAnotherSupport() {
        String other = YIELDING.supports().get(2).id();
        StateNumbers s = Changed.load(posts.state(), 2, l -> Changed.with(l, "restsOn", Optional.of(other)));
        assertThat(posts.failed(s)).containsExactly(Check.LOADS, Check.SUPPORT_REACTION);
        StateNumbers nowhere = Changed.load(posts.state(), 2, l -> Changed.with(l, "restsOn", Optional.empty()));
        assertThat(posts.failed(nowhere)).containsExactly(Check.LOADS, Check.SUPPORT_REACTION);
        List<AppliedLoad> asked = List.of(posts.loads().get(0), atSupport(2, 2000));
        assertThat(failures(posts.state(), asked, posts.installed())).containsExactly(Check.LOADS);
    }

    @Test
    void aLoadAtASupportThatIsSaidToHangInASpan() {
        StateNumbers s = Changed.load(posts.state(), 2, l -> Changed.with(l, "span", 1));
        assertThat(posts.failed(s)).containsExactly(Check.LOADS);
        List<AppliedLoad> asked = List.of(posts.loads().get(0), gripped(1, 6, 2000));
        assertThat(failures(posts.state(), asked, posts.installed())).containsExactly(Check.LOADS);
    }

    @Test
    void aLoadOfAnotherForceThanWasAskedFor() {
        List<AppliedLoad> atSupport = List.of(posts.loads().get(0), atSupport(1, 2001));
        assertThat(failures(posts.state(), atSupport, posts.installed())).containsExactly(Check.LOADS);
        List<AppliedLoad> inSpan = List.of(two.loads().get(0), gripped(1, 15, 1000.001));
        assertThat(failures(two.state(), inSpan, two.installed())).containsExactly(Check.LOADS);
    }

    /** A load of no force that is asked for and listed, but hangs at no joint of the cable. */
    @Test
    void aLoadWithoutAJoint() {
        List<LoadPosition> listed = new ArrayList<>(two.state().loads());
        listed.add(new LoadPosition(1, listed.get(0).point(), 0, Optional.empty()));
        List<AppliedLoad> asked = List.of(two.loads().get(0), two.loads().get(1), free(1, 8, 0));
        StateNumbers s = Changed.with(two.state(), "loads", listed);
        assertThat(failures(s, asked, two.installed())).containsExactly(Check.LOADS);
    }

    @Test
    void aForceWhereTheCableEnds() {
        StateNumbers s = Changed.piece(two.state(), 1, 3, p -> Changed.with(p, "load", 1.0));
        assertThat(two.failed(s)).containsExactly(Check.LOADS);
    }

    private static Lifeline line(double weight, Installed installed) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(weight)
                        .axialStiffness(4e6)
                        .build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(10, 0, 10))
                .installed(installed)
                .build();
    }

    /** The weight of a light cable as of a heavy one is right to a share of it. */
    @Test
    void anotherWeightOfALightCable() {
        for (double weight : new double[] {0.05, 0.5, 40}) {
            Solved each = Solved.of(line(weight, Installed.pretension(2000)), gripped(1, 4, 900));
            assertThat(each.failed(each.state())).isEmpty();
            for (double error : new double[] {5e-12, -5e-12}) {
                StateNumbers s =
                        Changed.piece(each.state(), 1, 1, p -> Changed.with(p, "weight", p.weight() * (1 + error)));
                assertThat(each.failed(s)).as("%s N/m", weight).containsExactly(Check.WEIGHT);
            }
        }
    }

    /** A cable without weight has none, whether taut or slack; a nanonewton a metre is let pass, that gives it a shape. */
    @Test
    void theWeightOfAWeightlessCable() {
        for (Installed installed : List.of(Installed.pretension(2000), Installed.unstretchedLength(10.5))) {
            Solved each = Solved.of(line(0, installed), gripped(1, 4, 900));
            assertThat(each.failed(each.state())).as(installed.toString()).isEmpty();
            for (double weight : new double[] {-1e-9, 2e-9}) {
                StateNumbers s = Changed.piece(each.state(), 1, 1, p -> Changed.with(p, "weight", weight));
                assertThat(each.failed(s)).as(installed + ", %s N/m", weight).containsExactly(Check.WEIGHT);
            }
            StateNumbers next = Changed.piece(each.state(), 1, 1, p -> Changed.with(p, "weight", 1e-9));
            assertThat(each.failed(next)).as(installed.toString()).isEmpty();
        }
    }

    /** A grip holds the material point of its station as installed, in the heat and in the cold as well. */
    @Test
    void aGripOnAHotOrColdLine() {
        Lifeline line = Cases.friction().line();
        Solved warm = Solved.of(line, gripped(1, 9, 900), gripped(3, 5, 1500));
        assertThat(warm.failed(warm.state())).isEmpty();
        for (double station : new double[] {9 + 1e-6, 9 - 1e-6}) {
            List<AppliedLoad> asked =
                    List.of(gripped(1, station, 900), warm.loads().get(1));
            assertThat(failures(warm.state(), asked, warm.installed()))
                    .as("station %s", station)
                    .containsExactly(Check.GRIPPED);
        }
        for (double station : new double[] {5 + 1e-6, 5 - 1e-6}) {
            List<AppliedLoad> asked = List.of(warm.loads().get(0), gripped(3, station, 1500));
            assertThat(failures(warm.state(), asked, warm.installed()))
                    .as("station %s", station)
                    .containsExactly(Check.GRIPPED);
        }
    }

    /** The tensions on both sides of a load that runs freely differ by a little more than the limit. */
    @Test
    void aFreeLoadThatWouldStillRun() {
        Solved one = Solved.of(Cases.level().line(), free(1, 8, 900), gripped(1, 20, 400));
        assertThat(one.failed(one.state())).isEmpty();
        StateNumbers s = Changed.piece(one.state(), 1, 1, p -> {
            double more = 2e-8 * p.endTension().magnitude();
            return Changed.with(
                    Changed.with(p, "endTension", Changed.pulled(p.endTension(), more)),
                    "startTension",
                    Changed.pulled(p.startTension(), more));
        });
        assertThat(one.failed(s)).contains(Check.FREE_RUNNING);
    }

    /**
     * Loads that run freely hang in the middle until somebody grips beside it: then they run against the grip, from the left
     * or from the right. Were they heavier than the cable beside them is steep, they would let go of it.
     */
    @Test
    void loadsThatRunAgainstAGripFromEitherSide() {
        Lifeline line = Cases.level().line();
        for (double grip : new double[] {14, 10}) {
            Solved one = Solved.of(line, free(1, 6, 300), gripped(1, grip, 2000));
            Solved both = Solved.of(line, free(1, 6, 300), free(1, 7, 200), gripped(1, grip, 2000));
            boolean left = grip > 12;
            assertThat(one.state().isTouch(one.state().span(1), 1)).isTrue();
            double[] loads = one.state().span(1).pieces().stream()
                    .mapToDouble(p -> p.load())
                    .toArray();
            assertThat(loads).containsExactly(left ? 300 : 2000, left ? 2000 : 300, 0);
            assertThat(one.failed(one.state())).as("grip at %s m", grip).isEmpty();
            assertThat(both.failed(both.state())).as("grip at %s m", grip).isEmpty();
            List<AppliedLoad> heavy = List.of(free(1, 6, 5000), gripped(1, grip, 2000));
            assertThat(failures(one.state(), heavy, one.installed()))
                    .as("grip at %s m", grip)
                    .containsExactly(Check.LOADS, Check.FREE_RUNNING);
            // Of two, each is light enough beside the cable, and both together are not.
            double steep = 2
                    * Math.abs((left
                                    ? both.state().span(1).firstPiece().endTension()
                                    : both.state().span(1).lastPiece().startTension())
                            .z());
            List<AppliedLoad> together =
                    List.of(free(1, 6, 0.6 * steep), free(1, 7, 0.6 * steep), gripped(1, grip, 2000));
            assertThat(failures(both.state(), together, both.installed()))
                    .as("grip at %s m", grip)
                    .containsExactly(Check.LOADS, Check.FREE_RUNNING);
            List<AppliedLoad> lighter =
                    List.of(free(1, 6, 0.4 * steep), free(1, 7, 0.4 * steep), gripped(1, grip, 2000));
            assertThat(failures(both.state(), lighter, both.installed()))
                    .as("grip at %s m", grip)
                    .containsExactly(Check.LOADS);
        }
    }

    /** A free load rests on the lower post, whichever end of its span that is; heavier, it would leave it. */
    @Test
    void aLoadThatRestsOnThePostAtEitherEndOfItsSpan() {
        Lifeline climbing = Cases.climbing().line();
        Lifeline.Builder b = Lifeline.builder().cable(climbing.cable()).installed(Installed.pretension(6000));
        for (int i = 3; i >= 0; i--) {
            Point p = climbing.supports().get(i).position();
            b.support(climbing.supports().get(i).withPosition(Point.of(30 - p.x(), 0, p.z())));
        }
        Solved down = Solved.of(b.build(), free(2, 5, 700));
        assertThat(down.state().loads().get(0).restsOn())
                .contains(climbing.supports().get(1).id());
        assertThat(down.failed(down.state())).isEmpty();
        assertThat(failures(down.state(), List.of(free(2, 5, 70_000)), down.installed()))
                .containsExactly(Check.LOADS, Check.FREE_RUNNING);
    }

    /** A free load beside others that it does not touch is in balance by itself, first, between them or last. */
    @Test
    void aFreeLoadThatTouchesNothingIsInBalanceByItself() {
        Lifeline line = Cases.level().line();
        double[][] places = {{12, 17, 20}, {4, 12, 20}, {4, 7, 12}};
        for (int free = 0; free < 3; free++) {
            AppliedLoad[] loads = new AppliedLoad[3];
            for (int i = 0; i < 3; i++) {
                loads[i] = i == free ? free(1, places[free][i], 3000) : gripped(1, places[free][i], 40);
            }
            Solved each = Solved.of(line, loads);
            assertThat(each.failed(each.state())).as("free load %d", free + 1).isEmpty();
            StateNumbers s = each.state();
            int joint = 0;
            while (s.span(1).pieces().get(joint).load() != 3000) {
                joint++;
            }
            assertThat(s.isTouch(s.span(1), joint)).isFalse();
            assertThat(s.isTouch(s.span(1), joint + 1)).isFalse();
            for (int piece : new int[] {joint + 1, joint + 2}) {
                String end = piece == joint + 1 ? "endTension" : "startTension";
                StateNumbers other = Changed.piece(s, 1, piece, p -> {
                    Vector3 t = end.equals("endTension") ? p.endTension() : p.startTension();
                    return Changed.with(p, end, Changed.pulled(t, 3e-8 * t.magnitude()));
                });
                assertThat(each.failed(other))
                        .as("free load %d, %s", free + 1, end)
                        .contains(Check.FREE_RUNNING);
            }
        }
    }
}
