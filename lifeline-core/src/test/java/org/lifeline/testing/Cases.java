package org.lifeline.testing;

import static org.lifeline.testing.Shorthand.INF;

import java.util.List;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed.Form;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** Lines and falls that between them use every part of the model. */
public final class Cases {
    private static final double STEEL = 1.2e-5;

    private Cases() {}

    /** All cases. */
    public static List<ArrestCase> all() {
        return List.of(
                level(),
                gripped(),
                friction(),
                clampsAndCorners(),
                yielding(),
                inlineAbsorber(),
                twoInlineAbsorbers(),
                cold(),
                synthetic(),
                sequence(),
                touching(),
                together(),
                retracting(),
                slack(),
                plain(),
                climbing());
    }

    private static Shorthand steel(String name) {
        return new Shorthand(name).cable(4.2, STEEL, 0, 0, 1, 4.9e6);
    }

    private static Shorthand oneFaller(Shorthand s, double level) {
        return s.faller(new double[] {100, level, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 6000, 1.2, 6000);
    }

    /** One level span, free-running, absorber on its plateau. */
    public static ArrestCase level() {
        Shorthand s = steel("level").end(0, 0, 12).end(24, 0, 12).installed(Form.PRETENSION, 1500, 1, 15);
        return oneFaller(s, 10.5)
                .fall(Attachment.FREE_RUNNING, Place.of(1, 8), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** Three spans over free anchors, gripped. */
    public static ArrestCase gripped() {
        Shorthand s = steel("gripped")
                .end(0, 0, 12)
                .post(10, 0, 12, 0)
                .post(22, 0, 12.5, 0)
                .end(30, 0, 12)
                .installed(Form.INITIAL_SAG, 0.08, 2, 15);
        return oneFaller(s, 10.8)
                .fall(Attachment.GRIPPED, Place.of(2, 4), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** Four spans over anchors with friction. */
    public static ArrestCase friction() {
        Shorthand s = steel("friction")
                .end(0, 0, 12)
                .post(10, 0, 12, 0.15)
                .post(22, 0, 12.2, 0.3)
                .post(30, 0, 12, 0.1)
                .end(42, 0, 12)
                .installed(Form.PRETENSION, 1200, 1, 15);
        return oneFaller(s, 10.5)
                .fall(Attachment.FREE_RUNNING, Place.of(2, 5), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** Clamped, free and friction anchors round a corner and up a climb. */
    public static ArrestCase clampsAndCorners() {
        Shorthand s = steel("clamps and corners")
                .end(0, 0, 10)
                .post(9, 1, 11, 0)
                .post(15, 9, 14, INF)
                .post(14, 20, 15, 0.2)
                .end(4, 24, 15)
                .installed(Form.HORIZONTAL_TENSION, 900, 2, 15);
        return oneFaller(s, 13)
                .fall(Attachment.GRIPPED, Place.of(3, 6), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** Ends and posts on elastic structures. */
    public static ArrestCase yielding() {
        Shorthand s = steel("yielding")
                .end(0, 0, 12)
                .springs(3e5, 2e5, 1e6)
                .post(12, 0, 12, 0)
                .springs(8e4, 5e4, INF)
                .post(24, 2, 12, 0.1)
                .springs(2e5, INF, 5e5)
                .end(36, 2, 12)
                .springs(1.5e5, INF, INF)
                .installed(Form.PRETENSION, 1500, 1, 15);
        return oneFaller(s, 10.5)
                .fall(Attachment.FREE_RUNNING, Place.of(2, 6), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** An in-line absorber that deploys, in the heat. */
    public static ArrestCase inlineAbsorber() {
        Shorthand s = steel("in-line absorber")
                .end(0, 0, 12)
                .absorber(8e6, 2.2e5, 0, 8000, 0.8, 8000)
                .post(12, 0, 12, 0)
                .end(24, 0, 12)
                .installed(Form.PRETENSION, 1500, 1, 15);
        return oneFaller(s, 10.5)
                .fall(Attachment.GRIPPED, Place.of(1, 7), Double.NaN)
                .at(40, DeploymentForce.MAXIMUM);
    }

    /** In-line absorbers at both ends, one rigid up to its activation, the other used up. */
    public static ArrestCase twoInlineAbsorbers() {
        Shorthand s = steel("two in-line absorbers")
                .end(0, 0, 12)
                .absorber(INF, 2.2e5, 0, 9000, 0.8, 11000)
                .end(18, 0, 13)
                .absorber(INF, 3e5, 0, 5000, 0.05, 5500)
                .installed(Form.PRETENSION, 1000, 1, 15);
        return oneFaller(s, 11)
                .fall(Attachment.FREE_RUNNING, Place.of(1, 9), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** A line in the cold. */
    public static ArrestCase cold() {
        Shorthand s = steel("cold")
                .end(0, 0, 12)
                .post(12, 0, 12, 0.12)
                .post(24, 0, 12, 0)
                .end(36, 0, 12)
                .springs(3e5, INF, INF)
                .installed(Form.PRETENSION, 1500, 1, 15);
        return oneFaller(s, 10.5)
                .fall(Attachment.FREE_RUNNING, Place.of(2, 6), Double.NaN)
                .at(-30, DeploymentForce.CLEARANCE);
    }

    /** A synthetic rope that stiffens. */
    public static ArrestCase synthetic() {
        Shorthand s = new Shorthand("synthetic")
                .cable(1.2, 0, 0, 0, 0.01, 500, 0.03, 4000, 0.06, 14000)
                .end(0, 0, 9)
                .post(8, 0, 9, 0.25)
                .end(17, 0, 9)
                .installed(Form.PRETENSION, 800, 1, 15);
        return oneFaller(s, 7.5)
                .fall(Attachment.FREE_RUNNING, Place.of(2, 4), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** The second falls when the first hangs, in another span. */
    public static ArrestCase sequence() {
        Shorthand s = steel("sequence")
                .end(0, 0, 12)
                .post(12, 0, 12, 0)
                .post(24, 0, 12, 0)
                .end(36, 0, 12)
                .installed(Form.PRETENSION, 1500, 1, 15)
                .hanging(Attachment.GRIPPED, Place.of(1, 5), 90)
                .hanging(Attachment.FREE_RUNNING, Place.of(3, 4), 110);
        return oneFaller(s, 10.5)
                .fall(Attachment.GRIPPED, Place.of(2, 7), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** Loads in one span that run against each other. */
    public static ArrestCase touching() {
        Shorthand s = steel("touching")
                .end(0, 0, 12)
                .post(20, 0, 12, 0)
                .end(36, 0, 12)
                .installed(Form.PRETENSION, 1500, 1, 15)
                .hanging(Attachment.FREE_RUNNING, Place.of(1, 4), 90)
                .hanging(Attachment.GRIPPED, Place.of(1, 12), 80)
                .hanging(Attachment.FREE_RUNNING, Place.of(1, 17), 100);
        return oneFaller(s, 10.5)
                .fall(Attachment.FREE_RUNNING, Place.of(1, 8), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** Two fall together and use their absorbers up. */
    public static ArrestCase together() {
        return steel("together")
                .end(0, 0, 12)
                .post(12, 0, 12, 0)
                .end(24, 0, 12)
                .installed(Form.PRETENSION, 1500, 1, 15)
                .faller(new double[] {140, 10.8, 1.5}, false, 2, 2e5, 0, 0, 0.06, 3000, 0.6, 3000)
                .faller(new double[] {120, 11, 1.5}, false, 2, 2.5e5, 0, 0, 0.05, 3200, 0.5, 3200)
                .fall(Attachment.FREE_RUNNING, Place.of(1, 5), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** A self-retracting device, rigid up to its brake force. */
    public static ArrestCase retracting() {
        return steel("retracting")
                .end(0, 0, 13)
                .post(12, 0, 13, 0)
                .end(24, 0, 13)
                .installed(Form.PRETENSION, 1500, 1, 15)
                .faller(new double[] {100, 10, 1.5}, true, 0.6, 1e5, 0, 4000, 1, 4000)
                .fall(Attachment.FREE_RUNNING, Place.of(2, 3), Double.NaN)
                .at(15, DeploymentForce.CLEARANCE);
    }

    /** A slack line that first has to straighten. */
    public static ArrestCase slack() {
        Shorthand s = steel("slack").end(0, 0, 12).end(10, 0, 12.5).installed(Form.UNSTRETCHED_LENGTH, 11.5, 1, 15);
        return oneFaller(s, 8.5)
                .fall(Attachment.GRIPPED, Place.of(1, 4), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** A plain lanyard and no free fall: the load is put on suddenly. */
    public static ArrestCase plain() {
        return steel("plain")
                .end(0, 0, 12)
                .post(12, 0, 12, 0)
                .end(24, 0, 12)
                .installed(Form.PRETENSION, 1500, 1, 15)
                .faller(new double[] {100, 8, 1.5}, false, 1.5, 1e5, 0, 0)
                .fall(Attachment.GRIPPED, Place.of(1, 6), 0)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** A climbing line on which a free-running load rests on the post below. */
    public static ArrestCase climbing() {
        Shorthand s = steel("climbing")
                .end(0, 0, 2)
                .post(10, 0, 10, 0)
                .post(20, 0, 18, 0.1)
                .end(30, 0, 26)
                .installed(Form.PRETENSION, 6000, 1, 15)
                .hanging(Attachment.FREE_RUNNING, Place.of(3, 4), 70);
        return oneFaller(s, 9)
                .fall(Attachment.FREE_RUNNING, Place.of(2, 4), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }
}
