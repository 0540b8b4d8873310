package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** What must hold of any motion, whatever its numbers: mirror, scale, division of a load, order of size. */
class MotionTruthsTest {
    private static final int CASES = Boolean.getBoolean("lifeline.long") ? 60 : 4;
    private static final double UNTIL = 0.9;

    private static Lifeline line(double scale, boolean mirrored) {
        double[] x = mirrored ? new double[] {0, 8, 20} : new double[] {0, 12, 20};
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.4 * scale)
                        .axialStiffness(3e6 * scale)
                        .build())
                .endAnchor("a", Point.of(x[0], 0, 10))
                .intermediateAnchor("p", Point.of(x[1], 0, 10), Passage.friction(0.1))
                .endAnchor("b", Point.of(x[2], 0, 10))
                .pretension(1500 * scale)
                .build();
    }

    private static MotionSetup.Person person(double mass, double stiffness, double freeFall) {
        return new MotionSetup.Person(
                mass, LoadingCurve.spring(stiffness), MotionCases.TAUT, new MotionSetup.Timing(0, freeFall, true));
    }

    private static Motion run(Lifeline line, int span, double station, List<MotionSetup.Person> who) {
        LineModel model = new LineModel(line);
        MotionSetup setup = new MotionSetup(model, 5e-4);
        setup.attach(span, model.pointAtStation(span, station), true, who);
        Motion motion = new Motion(setup, 0.4, 1, new Motion.Sampling(UNTIL, 0.01));
        motion.run(UNTIL);
        return motion;
    }

    private static void near(String what, double a, double b, double share) {
        assertThat(a).as(what).isCloseTo(b, within(share * Math.abs(b)));
    }

    /** Read from its other end a line is another input and the same line. */
    @Test
    void theMirroredLineMovesAsInAMirror() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double station = r.nextDouble(2, 10);
            MotionSetup.Person who = person(r.nextDouble(70, 130), r.nextDouble(2e4, 8e4), r.nextDouble(0.5, 2));
            PeakValues a = run(line(1, false), 0, station, List.of(who)).whole();
            PeakValues b = run(line(1, true), 1, 12 - station, List.of(who)).whole();
            // Meshes differ in where their nodes stand beside the attachment: the mesh's own error.
            near("force, seed " + seed, a.force[0], b.force[0], 5e-3);
            near("start, seed " + seed, a.support[0], b.support[2], 2e-2);
            near("end, seed " + seed, a.support[2], b.support[0], 2e-2);
            near("lowest, seed " + seed, a.lowest[0], b.lowest[0], 2e-3);
        }
    }

    /** All masses and stiffnesses twice as large: accelerations stay, forces double. */
    @Test
    void forcesScaleWithMassAndStiffness() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double station = r.nextDouble(2, 10);
            double mass = r.nextDouble(70, 130);
            double stiffness = r.nextDouble(2e4, 8e4);
            double fall = r.nextDouble(0.5, 2);
            PeakValues one = run(line(1, false), 0, station, List.of(person(mass, stiffness, fall)))
                    .whole();
            PeakValues two = run(line(2, false), 0, station, List.of(person(2 * mass, 2 * stiffness, fall)))
                    .whole();
            near("force, seed " + seed, two.force[0], 2 * one.force[0], 1e-6);
            near("tension, seed " + seed, two.tension, 2 * one.tension, 1e-6);
            near("extension, seed " + seed, two.extension[0], one.extension[0], 1e-6);
            near("lowest, seed " + seed, two.lowest[0], one.lowest[0], 1e-6);
            near("time, seed " + seed, two.forceTime[0], one.forceTime[0], 1e-6);
        }
    }

    /** Two alike at one place are one of twice the mass on a lanyard twice as stiff. */
    @Test
    void twoWhoAreAlikeAreOneOfTwiceTheSize() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double station = r.nextDouble(2, 10);
            double mass = r.nextDouble(70, 130);
            double stiffness = r.nextDouble(2e4, 8e4);
            double fall = r.nextDouble(0.5, 2);
            MotionSetup.Person each = person(mass, stiffness, fall);
            PeakValues two =
                    run(line(1, false), 0, station, List.of(each, each)).whole();
            PeakValues one = run(line(1, false), 0, station, List.of(person(2 * mass, 2 * stiffness, fall)))
                    .whole();
            near("first, seed " + seed, two.force[0], 0.5 * one.force[0], 1e-3);
            near("second, seed " + seed, two.force[1], two.force[0], 1e-9);
            near("together, seed " + seed, two.together, one.together, 1e-3);
            near("tension, seed " + seed, two.tension, one.tension, 1e-3);
        }
    }

    @Test
    void aLongerFallPullsHarderAndGoesDeeper() {
        double lastForce = 0;
        double lastTension = 0;
        double lastExtension = 0;
        for (double fall = 0.25; fall <= 2; fall += 0.5) {
            PeakValues p =
                    run(line(1, false), 0, 5, List.of(person(100, 5e4, fall))).whole();
            assertThat(p.force[0]).as("fall %s", fall).isGreaterThan(lastForce);
            assertThat(p.tension).as("fall %s", fall).isGreaterThan(lastTension);
            assertThat(p.extension[0]).as("fall %s", fall).isGreaterThan(lastExtension);
            lastForce = p.force[0];
            lastTension = p.tension;
            lastExtension = p.extension[0];
        }
    }

    /** What leaves one span comes into the other: no material is made or lost, whatever slips and is meshed anew. */
    @Test
    void materialIsConserved() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LineModel model = new LineModel(line(1, false));
            MotionSetup setup = new MotionSetup(model, 5e-4);
            MotionSetup.Person who = person(120, 6e4, r.nextDouble(1, 2));
            setup.attach(0, model.pointAtStation(0, r.nextDouble(2, 10)), true, List.of(who));
            MotionSystem system = new MotionSystem(setup, 0.4, 1);
            double whole = MotionCases.unstretched(system.chain);
            Strings.run(system, UNTIL);
            assertThat(Math.abs(system.anchors[1].passed)).as("seed %d", seed).isGreaterThan(1e-4);
            near("seed " + seed, MotionCases.unstretched(system.chain), whole, 1e-12);
        }
    }

    /** Friction and damping take energy, gravity and springs lend it: the account closes. */
    @Test
    void theAccountOfEnergyCloses() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double mass = r.nextDouble(70, 130);
            Motion motion = run(
                    line(1, false),
                    0,
                    r.nextDouble(2, 10),
                    List.of(person(mass, r.nextDouble(2e4, 8e4), r.nextDouble(0.5, 2))));
            double fall = mass * MotionCases.G * motion.fallDistance();
            assertThat(motion.energyDrift()).as("seed %d", seed).isLessThan(2e-3 * fall);
            for (int part : new int[] {MotionState.Energy.FRICTION, MotionState.Energy.DAMPING}) {
                double[] heat = motion.history().energy(part);
                for (int i = 1; i < heat.length; i++) {
                    assertThat(heat[i]).as("heat, seed %d", seed).isGreaterThan(heat[i - 1] - 1e-6 * fall);
                }
            }
        }
    }
}
