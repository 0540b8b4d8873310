package org.lifeline.design.envelope;

import java.util.List;
import java.util.SplittableRandom;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Random designs, the same for the same seed. */
public final class RandomDesigns {
    private final SplittableRandom random;

    /** Designs of a seed. */
    public RandomDesigns(long seed) {
        this.random = new SplittableRandom(seed);
    }

    private double in(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    /** Ranges: each present or not. */
    public Tolerances tolerances() {
        Tolerances t = Tolerances.none();
        if (chance(0.3)) {
            t = t.withMass(Interval.of(in(50, 80), in(90, 140)));
        }
        if (chance(0.3)) {
            t = t.withPretension(Interval.of(in(0.6, 0.95), in(1.05, 1.5)));
        }
        if (chance(0.3)) {
            t = t.withFriction(Interval.of(in(0, 0.08), in(0.1, 0.3)));
        }
        return t;
    }

    /** A design. */
    public LifelineDesign design() {
        int spans = 1 + random.nextInt(3);
        Lifeline line = line(spans);
        while (!hangs(line)) {
            line = line(spans);
        }
        LifelineDesign.Builder b = LifelineDesign.builder("random").line(line);
        double level = line.supports().get(0).position().z() - in(0.5, 2);
        Worker a = worker("A", level, line);
        b.worker(a);
        int temperatures = 1 + random.nextInt(3);
        for (int i = 0; i < temperatures; i++) {
            b.temperature(Math.rint(in(-40, 60)));
        }
        if (chance(0.25)) {
            Worker c = worker("C", level, line);
            b.worker(c);
            int span = 1 + random.nextInt(spans);
            Fall.Builder fall = Fall.builder("second")
                    .at(Place.of(1, line.run(1) / 2))
                    .faller(a)
                    .hanging(c, Place.of(span, in(0.2, 0.8) * line.run(span)));
            b.fall(fall.build());
        }
        double total = line.along(Place.of(spans, line.run(spans)));
        ClearanceRules rules = ClearanceRules.commonPractice();
        if (chance(0.7)) {
            double from = in(0, 0.8) * total;
            rules = rules.withObstructions(List.of(
                    new Obstruction(0, total, 0), new Obstruction(from, from + in(0.02, 0.3) * total, in(0.5, 3))));
        }
        b.clearance(rules);
        if (chance(0.3)) {
            b.modelFactors(new ModelFactors(in(0.9, 1.2), in(0.9, 1.2), "random"));
        }
        return b.build();
    }

    /** Tells whether the cable can be installed as stated: not so slack that it would run together into one span. */
    private static boolean hangs(Lifeline line) {
        try {
            return Statics.withDefaults().solve(line, List.of()).firstTension() > 0;
        } catch (InvalidInputException e) {
            return false;
        }
    }

    private Lifeline line(int spans) {
        double ea = in(0.8e6, 8e6);
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(in(1.5, 8))
                        .axialStiffness(ea)
                        .breakingStrength(80e3)
                        .build());
        double x = 0;
        double y = 0;
        double z = 10;
        double heading = 0;
        b.support(end("north", Point.of(x, y, z)));
        double longest = 0;
        for (int i = 1; i <= spans; i++) {
            double run = in(3, 15);
            longest = Math.max(longest, run);
            heading += i > 1 && chance(0.3) ? in(-0.6, 0.6) : 0;
            x += run * Math.cos(heading);
            y += run * Math.sin(heading);
            z += chance(0.4) ? in(-0.05, 0.05) * run : 0;
            Point p = Point.of(x, y, z);
            b.support(i == spans ? end("south", p) : Support.intermediate("post " + i, p, passage()));
        }
        b.installed(
                chance(0.7)
                        ? Installed.pretension(in(300, 4000))
                        : Installed.initialSag(1, in(0.01, 0.04) * Math.max(3, longest)));
        return b.build();
    }

    private Passage passage() {
        double d = random.nextDouble();
        return d < 0.3 ? Passage.free() : d < 0.7 ? Passage.friction(in(0.05, 0.25)) : Passage.clamped();
    }

    private Support end(String id, Point p) {
        Support s = Support.end(id, p);
        if (chance(0.3)) {
            s = s.withStiffness(Stiffness.alongX(in(1e5, 2e6)));
        }
        if (chance(0.2)) {
            double force = in(5e3, 12e3);
            s = s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                    List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(in(0.3, 1), force * 1.05)),
                    8e6,
                    2.5e5)));
        }
        return s;
    }

    private Worker worker(String id, double level, Lifeline line) {
        Attachment attachment = chance(0.5) ? Attachment.GRIPPED : Attachment.FREE_RUNNING;
        double low = in(2000, 4000);
        // Long enough for the highest and the lowest support.
        double reach = line.supports().stream()
                .mapToDouble(s -> Math.hypot(s.position().z() - level - 1.5, 0.8))
                .max()
                .orElse(0);
        Connection c = Connection.lanyard(
                Math.max(reach, in(1, 2)),
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(low)
                        .maximumForce(low + in(500, 3000))
                        .maximumExtension(in(0.5, 1.6))
                        .initialStiffness(1e5)
                        .stopStiffness(2e5)
                        .build());
        return Worker.builder(id)
                .mass(in(60, 130))
                .walkingLevel(level)
                .attachment(attachment)
                .connection(c)
                .offset(chance(0.3) ? in(0, 0.8) : 0)
                .build();
    }
}
