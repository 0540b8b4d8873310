package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.EnergyHistory.Part;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/** What the result of an arrest in time says, against its own histories and peaks, and against mechanics. */
class MotionResultTest {
    private static final double G = 9.80665;
    private static final double STIFFNESS = 3e6;
    private static final TransientArrest QUICK = TransientArrest.withDefaults()
            .withSegmentLength(0.5)
            .withRefinements(0)
            .withDuration(1.5)
            .withSampling(1e-4)
            .withTemperature(-20)
            .withEndAfterFirstCatch(0.05);

    private static InlineAbsorber absorber(double force) {
        return InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(0.8, force)), 6e6, 2e5));
    }

    /** Three spans over posts with friction, the second yielding, the ends with absorbers; in the cold. */
    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.5)
                        .axialStiffness(STIFFNESS)
                        .thermalExpansion(1.2e-5)
                        .dampingTime(0.01)
                        .build())
                .support(Support.end("a", Point.of(0, 0, 10)).withInlineAbsorber(absorber(5000)))
                .intermediateAnchor("p", Point.of(8, 0, 10), Passage.friction(0.1))
                .support(Support.intermediate("q", Point.of(17, 3, 10.4), Passage.friction(0.1))
                        .withStiffness(new Stiffness(2e5, 3e5, 4e5)))
                .support(Support.end("b", Point.of(25, 3, 10)).withInlineAbsorber(absorber(4000)))
                .pretension(1500)
                .build();
    }

    private static Worker worker(String id, double mass) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(PlainParts.sixKilonewtons())
                .build();
    }

    private static Fall.Builder fall() {
        return Fall.builder("f").at(Place.of(2, 4)).freeFall(1.6);
    }

    private static Fall oneBesideOneWhoHangs() {
        return fall().faller(worker("w", 110))
                .hanging(worker("h", 80), Place.of(3, 4))
                .build();
    }

    /** Number of the sample at the lowest point. */
    private static int lowest(TransientResult r, String worker) {
        return nearest(r, r.firstCatch().worker(worker).lowest().time());
    }

    private static int nearest(TransientResult r, double time) {
        double[] t = r.history().times();
        int best = 0;
        for (int i = 0; i < t.length; i++) {
            best = Math.abs(t[i] - time) < Math.abs(t[best] - time) ? i : best;
        }
        return best;
    }

    /** At the lowest point: what of the cable has passed, where who hangs is, and where the energies are. */
    @Test
    void theArrestIsTheMotionAtItsLowestPoint() {
        TransientResult r = QUICK.solve(line(), oneBesideOneWhoHangs());
        int at = lowest(r, "w");
        ArrestResult a = r.arrest();
        // Histories count the length at the temperature of the fall, slips at that of the installation.
        double thermal = 1 - 35 * 1.2e-5;
        for (int i = 0; i < 4; i++) {
            double passed = r.history().supports().get(i).slip()[at];
            assertThat(a.slip(i)).as("support %d", i).isCloseTo(passed / thermal, within(1e-5));
        }
        assertThat(a.slip(1)).isGreaterThan(0.01);
        assertThat(a.slip(2)).isGreaterThan(0.01);
        LoadPosition hanging = a.peak().loads().get(0);
        assertThat(hanging.force()).isCloseTo(80 * G, within(1e-9));
        assertThat(hanging.span()).isEqualTo(3);
        assertThat(hanging.point().x()).isCloseTo(r.history().worker("h").lineX()[at], within(1e-3));
        assertThat(a.attachmentAtPeak().x()).isCloseTo(r.history().worker("w").lineX()[at], within(1e-3));

        EnergyAccount account = a.energy();
        double moved = r.history().worker("w").z()[at] - r.history().worker("w").z()[0];
        assertThat(account.fall()).isCloseTo(-110 * G * moved, within(1e-3));
        double cable = part(r, Part.STRAIN, at)
                + part(r, Part.WEIGHT, at)
                + part(r, Part.CABLE_MOTION, at)
                + part(r, Part.DAMPING, at)
                + part(r, Part.MESH, at);
        double lifted = 80
                * G
                * (r.history().worker("h").z()[at] - r.history().worker("h").z()[0]);
        // Every step is sampled here, the lowest point with them.
        double little = 1e-6 * account.fall();
        for (Part each : List.of(Part.CABLE_MOTION, Part.DAMPING, Part.WEIGHT, Part.FRICTION, Part.ANCHORS)) {
            assertThat(Math.abs(part(r, each, at))).as("%s", each).isGreaterThan(10 * little);
        }
        assertThat(account.cable()).isCloseTo(cable, within(little));
        assertThat(account.hanging()).isCloseTo(lifted + part(r, Part.WORKER_MOTION, at), within(little));
        assertThat(account.connection()).isCloseTo(part(r, Part.CONNECTIONS, at), within(little));
        assertThat(account.friction()).isCloseTo(part(r, Part.FRICTION, at), within(little));
        assertThat(account.inlineAbsorbers()).isCloseTo(part(r, Part.INLINE_ABSORBERS, at), within(little));
        assertThat(account.anchors()).isCloseTo(part(r, Part.ANCHORS, at), within(little));
        assertThat(account.residual()).isCloseTo(0, within(2e-3 * account.fall()));
        assertThat(r.relativeDrift()).isEqualTo(r.energyDrift() / account.fall());
    }

    private static double part(TransientResult r, Part part, int at) {
        return r.history().energies().of(part)[at];
    }

    /**
     * The line at the lowest point is a chain of bars from support to support, each as long as its tension makes it; the
     * first and the last are longer by what their absorbers have grown.
     */
    @Test
    void theLineAtTheLowestPointIsAChainOfBars() {
        ArrestResult a = QUICK.solve(line(), oneBesideOneWhoHangs()).arrest();
        assertThat(a.peak().spans()).extracting(SpanState::number).containsExactly(1, 2, 3);
        for (SpanState span : a.peak().spans()) {
            Point end = span.firstSupport();
            for (CablePiece piece : span.pieces()) {
                assertThat(piece.start()).isEqualTo(end);
                end = piece.end();
                double length = piece.start().distance(end);
                double tension = piece.startTension().magnitude();
                boolean first = span.number() == 1 && piece.equals(span.pieces().get(0));
                boolean last = span.number() == 3 && end.equals(span.secondSupport());
                double grown =
                        first || last ? a.inlineAbsorbers().get(first ? 0 : 1).extension() : 0;
                // Internal friction carries a part of the tension where the length changes.
                assertThat(length - grown)
                        .isCloseTo(
                                piece.unstretchedLength() * (1 + tension / STIFFNESS),
                                within(4e-3 * piece.unstretchedLength()));
                assertThat(tension).isLessThanOrEqualTo(a.maximumTension() * (1 + 1e-9));
                // Along the bar: no part of it across.
                assertThat(end.minus(piece.start()).angleTo(piece.startTension()))
                        .isCloseTo(0, within(1e-6));
            }
            assertThat(end).isEqualTo(span.secondSupport());
        }
    }

    private static double largest(double[] values) {
        return Arrays.stream(values).max().orElseThrow();
    }

    /** Each end has its own absorber, and a post has none; supports in the order of the line, with their own peaks. */
    @Test
    void everySupportHasItsOwnHistoryAndPeaks() {
        TransientResult r = QUICK.solve(line(), oneBesideOneWhoHangs());
        List<SupportHistory> histories = r.history().supports();
        assertThat(histories).extracting(SupportHistory::id).containsExactly("a", "p", "q", "b");
        assertThat(histories.get(1).inlineExtension())
                .containsOnly(0)
                .hasSameSizeAs(r.history().times());
        assertThat(histories.get(2).inlineExtension())
                .containsOnly(0)
                .hasSameSizeAs(r.history().times());
        List<InlineAbsorberState> absorbers = r.arrest().inlineAbsorbers();
        assertThat(absorbers).extracting(InlineAbsorberState::supportId).containsExactly("a", "b");
        assertThat(absorbers.get(0).extension()).isGreaterThan(0.01);
        assertThat(absorbers.get(1).extension()).isGreaterThan(absorbers.get(0).extension() + 0.01);
        assertThat(largest(histories.get(0).inlineExtension()))
                .isCloseTo(absorbers.get(0).extension(), within(1e-4));
        assertThat(largest(histories.get(3).inlineExtension()))
                .isCloseTo(absorbers.get(1).extension(), within(1e-4));
        // An absorber on its plateau holds the tension of the cable at its end.
        SupportPeaks first = r.wholeRun().support("a");
        SupportPeaks last = r.wholeRun().support("b");
        assertThat(first.tensionBehind()).isCloseTo(5000, within(1e-6 * 5000));
        assertThat(last.tensionBefore()).isCloseTo(4000, within(1e-6 * 4000));
        for (int i = 0; i < 4; i++) {
            SupportHistory h = histories.get(i);
            SupportPeaks peaks = r.wholeRun().supports().get(i);
            assertThat(peaks.id()).isEqualTo(h.id());
            // Samples are a tenth of a millisecond apart; steps, at which the peaks are taken, lie closer.
            assertThat(peaks.force().value()).isBetween(largest(h.force()), 1.1 * largest(h.force()));
            assertThat(peaks.force().time())
                    .isBetween(0.0, r.history().times()[r.history().times().length - 1]);
            assertThat(peaks.tensionBefore()).isBetween(largest(h.tensionBefore()), 1.1 * largest(h.tensionBefore()));
            assertThat(peaks.tensionBehind()).isBetween(largest(h.tensionBehind()), 1.1 * largest(h.tensionBehind()));
        }
        // Force and displacement of the result are those of one moment, at which the force was largest.
        for (int i = 0; i < 4; i++) {
            SupportReaction s = r.arrest().supports().get(i);
            int at = nearest(r, r.firstCatch().support(s.id()).force().time());
            SupportHistory h = histories.get(i);
            double[] force = {s.vector().x(), s.vector().y(), s.vector().z()};
            double[] moved = {
                s.displacement().x(), s.displacement().y(), s.displacement().z()
            };
            for (int axis = 0; axis < 3; axis++) {
                assertThat(force[axis]).isCloseTo(h.forceAlong(axis)[at], within(1e-6));
                assertThat(moved[axis]).isCloseTo(h.displacement(axis)[at], within(1e-12));
                assertThat(Math.abs(moved[axis]) > 1e-4).isEqualTo(s.id().equals("q"));
            }
            assertThat(s.force())
                    .isCloseTo(r.firstCatch().support(s.id()).force().value(), within(1e-6));
        }
    }

    /** The change from mesh to mesh is the largest of arrest force, tension and lowest point, this over the fall. */
    @Test
    void theSpreadIsTheLargestChangeFromMeshToMesh() {
        TransientResult r =
                QUICK.withSegmentLength(2).withRefinements(2).withAccuracy(1e-6).solve(line(), oneBesideOneWhoHangs());
        List<MeshRun> meshes = r.meshes();
        assertThat(meshes).hasSize(3);
        assertThat(meshes.get(0).spread()).isNaN();
        double fallen = r.history().worker("w").z()[0]
                - r.firstCatch().worker("w").lowest().value();
        for (int k = 1; k < 3; k++) {
            MeshRun.Peaks old = meshes.get(k - 1).peaks();
            MeshRun.Peaks now = meshes.get(k).peaks();
            double force = Math.abs(now.arrestForce() - old.arrestForce()) / now.arrestForce();
            double tension = Math.abs(now.tension() - old.tension()) / now.tension();
            double depth = Math.abs(now.lowest() - old.lowest()) / fallen;
            assertThat(tension).isPositive();
            assertThat(meshes.get(k).spread())
                    .isCloseTo(Math.max(force, Math.max(tension, depth)), within(1e-3 * tension));
        }
        assertThat(r.spread()).isEqualTo(meshes.get(2).spread());
        MeshRun.Peaks last = meshes.get(2).peaks();
        assertThat(last.tension()).isEqualTo(r.firstCatch().tension().value());
        assertThat(last.arrestForce()).isEqualTo(r.arrest().arrestForce());
        assertThat(last.lowest()).isEqualTo(r.firstCatch().worker("w").lowest().value());
        // What is allowed for is what the allowances say, force by force.
        assertThat(r.accuracy()).isEqualTo(1e-6);
        assertThat(r.accurate()).isFalse();
        assertThat(r.tensionAllowance())
                .isEqualTo(r.allowances().tension().force())
                .isPositive();
        assertThat(r.arrestForceAllowance())
                .isEqualTo(r.allowances().arrestForce().force());
        assertThat(r.fallDistanceAllowance()).isEqualTo(r.allowances().lowest()).isBetween(1e-6, 0.5);
        for (Support s : line().supports()) {
            assertThat(r.supportAllowance(s.id()))
                    .isEqualTo(r.allowances().support(s.id()).force())
                    .isPositive()
                    .isFinite();
        }
        // The damping of the cable is that which was stated, and halved meshes go in shorter steps.
        assertThat(r.dampingTime()).isEqualTo(0.01);
        TransientResult coarse = QUICK.withSegmentLength(2).solve(line(), oneBesideOneWhoHangs());
        assertThat(r.timeStep()).isPositive().isLessThan(0.9 * coarse.timeStep());
    }

    @Test
    void itIsComparedWithTheEnergyBalanceOfTheSameFall() {
        TransientResult r = QUICK.solve(line(), oneBesideOneWhoHangs());
        ArrestResult balance = EnergyBalance.withDefaults().withTemperature(-20).solve(line(), oneBesideOneWhoHangs());
        assertThat(r.energyBalance().orElseThrow().canonicalForm()).isEqualTo(balance.canonicalForm());
        assertThat(r.tensionRatio()).hasValue(r.arrest().maximumTension() / balance.maximumTension());
        assertThat(r.forceRatio()).hasValue(r.arrest().arrestForce() / balance.arrestForce());
        assertThat(r.fallDistanceRatio()).hasValue(r.arrest().totalFallDistance() / balance.totalFallDistance());
    }

    /** Of two who fall the hardest arrested, the longest deployment and the deepest, in whichever order they are named. */
    @Test
    void ofTwoWhoFallTheWorstCounts() {
        Worker light = worker("light", 60);
        Worker heavy = worker("heavy", 120).withConnection(PlainParts.lanyard(2500, 2500, 1.75));
        for (List<Worker> order : List.of(List.of(light, heavy), List.of(heavy, light))) {
            TransientResult r = QUICK.solve(
                    line(), fall().faller(order.get(0)).faller(order.get(1)).build());
            ArrestResult a = r.arrest();
            assertThat(a.firstFaller().id()).isEqualTo(order.get(0).id());
            double hard = r.firstCatch().worker("light").force().value();
            double soft = r.firstCatch().worker("heavy").force().value();
            assertThat(hard).isGreaterThan(soft + 100);
            assertThat(a.hardestArrested().id()).isEqualTo("light");
            assertThat(a.arrestForce()).isEqualTo(hard);
            assertThat(a.clearanceWorker().id()).isEqualTo("heavy");
            double deepest = r.firstCatch().worker("heavy").lowest().value();
            assertThat(deepest)
                    .isLessThan(r.firstCatch().worker("light").lowest().value());
            assertThat(a.clearance().lowestPoint())
                    .isCloseTo(deepest - a.harnessStretch() - heavy.attachmentHeight(), within(1e-9));
            assertThat(a.totalFallDistance())
                    .isCloseTo(r.history().worker("heavy").z()[0] - deepest + a.harnessStretch(), within(1e-9));
            for (int i = 0; i < 2; i++) {
                assertThat(a.deployments().get(i))
                        .isEqualTo(r.firstCatch().worker(order.get(i).id()).extension());
            }
            assertThat(a.bottomedOut()).isFalse();
        }
    }

    /** What stands below counts where the fall is: measured along the line, over the spans before it. */
    @Test
    void anObstructionCountsBelowThePlaceOfTheFall() {
        double before = Math.hypot(8, 0);
        for (double shift : new double[] {0, -8, 8}) {
            ClearanceRules rules = ClearanceRules.commonPractice()
                    .withObstructions(List.of(new Obstruction(before + 3.5 + shift, before + 4.5 + shift, 3)));
            ArrestResult a = QUICK.withClearance(rules)
                    .solve(line(), fall().faller(worker("w", 110)).build())
                    .arrest();
            assertThat(a.clearance().obstruction().isPresent()).isEqualTo(shift == 0);
        }
    }
}
