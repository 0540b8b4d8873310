package org.lifeline.internal.motion;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Frequencies, wave speeds and periods read from simulated signals: what tests compare with closed forms. */
public final class WaveSignals {
    private static final int CROSSINGS = 12;

    private WaveSignals() {}

    /**
     * A string that vibrates in one mode.
     *
     * @param tension tension [N] and axial stiffness [N]
     * @param span length [m] and mass per stretched length [kg/m]
     * @param mode number of the mode
     * @param segments number of segments
     * @return frequency [Hz]
     */
    public static double mode(double[] tension, double[] span, int mode, int segments) {
        MotionSystem string = Strings.string(tension, span, Strings.NONE, segments);
        double[] rest = string.chain.z.clone();
        DoubleUnaryOperator shape = x -> Math.sin(mode * Math.PI * x / span[0]);
        Strings.deflect(string, x -> 1e-5 * shape.applyAsDouble(x));
        return Strings.frequency(string, rest, shape, CROSSINGS) / (2 * Math.PI);
    }

    /**
     * Speed of the crest of a transverse hump that is twelve segments wide on 400 segments over 20 m.
     *
     * @param tension tension [N]
     * @param mass mass per length [kg/m]
     * @param segments number of segments
     * @return speed [m/s]
     */
    public static double hump(double tension, double mass, int segments) {
        MotionSystem string =
                Strings.string(new double[] {tension, 1e3 * tension}, new double[] {20, mass}, Strings.NONE, segments);
        double[] rest = string.chain.z.clone();
        Strings.deflect(string, x -> 1e-4 * Math.exp(-Math.pow((x - 10) / 0.6, 2)));
        double crossing = 20 / Math.sqrt(tension / mass);
        Strings.run(string, 0.18 * crossing);
        double time = string.time;
        double early = crest(string, string.chain.z, rest, 10);
        Strings.run(string, 0.38 * crossing);
        return (crest(string, string.chain.z, rest, 10) - early) / (string.time - time);
    }

    /**
     * Speed of the crest of a hump of displacement along the cable, 3 m wide, on 60 m.
     *
     * @param tension tension [N] and axial stiffness [N]
     * @param mass mass per stretched length [kg/m]
     * @param segments number of segments
     * @return speed [m/s]
     */
    public static double push(double[] tension, double mass, int segments) {
        MotionSystem string = Strings.string(tension, new double[] {60, mass}, Strings.NONE, segments);
        LumpedMassChain c = string.chain;
        double[] home = c.x.clone();
        for (int i = 1; i < c.nodes - 1; i++) {
            c.x[i] += 1e-4 * Math.exp(-Math.pow((home[i] - 30) / 3, 2));
        }
        double crossing = 60 / Math.sqrt(tension[1] / mass);
        Strings.run(string, 0.195 * crossing);
        double time = string.time;
        double early = crest(string, c.x, home, 35);
        Strings.run(string, 0.29 * crossing);
        return (crest(string, c.x, home, 35) - early) / (string.time - time);
    }

    /** Where the moved nodes have moved most beyond a place [m]. */
    private static double crest(MotionSystem string, double[] now, double[] rest, double from) {
        int n = string.chain.nodes;
        double[] moved = new double[n];
        for (int i = 0; i < n; i++) {
            moved[i] = now[i] - rest[i];
        }
        return Strings.crest(Arrays.copyOf(string.chain.x, n), moved, from, string.chain.x[n - 1]);
    }

    /**
     * First symmetric in-plane mode of a level cable that sags by 1/200 of its span of 30 m.
     *
     * @param lambda Irvine's parameter λ²: (8 sag/span)² EA span/(H length) [-]
     * @param root about the reduced frequency, for the shape to start from [-]
     * @param segments number of segments
     * @return reduced frequency ω L/√(H/m) [-]
     */
    public static double sagged(double lambda, double root, int segments) {
        double length = 30;
        double weight = 5;
        double gravity = 9.80665;
        double ratio = 8.0 / 200;
        double h = weight * length / ratio;
        double stretched = 1 + ratio * ratio / 8;
        double ea = lambda * h * stretched / (ratio * ratio);
        double end = Math.hypot(h, 0.5 * weight * length);
        MotionSystem cable =
                Strings.string(new double[] {end, ea}, new double[] {length, weight / gravity}, gravity, segments);
        double[] rest = cable.chain.z.clone();
        DoubleUnaryOperator shape =
                x -> 1 - Math.tan(root / 2) * Math.sin(root * x / length) - Math.cos(root * x / length);
        Strings.deflect(cable, x -> 1e-3 * shape.applyAsDouble(x));
        double omega = Strings.frequency(cable, rest, shape, CROSSINGS);
        return omega * length / Math.sqrt(h * gravity / weight);
    }

    /**
     * A worker on a very stiff lanyard below a very stiff line, let go at an angle.
     *
     * @param length length of the lanyard [m]
     * @param angle angle from the vertical [rad]
     * @param gravity acceleration of gravity [m/s²]
     * @return period of the swing [s]
     */
    public static double pendulum(double length, double angle, double gravity) {
        LineModel model = new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(1).axialStiffness(1e9).build())
                .endAnchor("a", Point.of(0, -0.5, 0))
                .endAnchor("b", Point.of(0, 0.5, 0))
                .pretension(1e7)
                .gravity(gravity)
                .build());
        MotionSetup setup = new MotionSetup(model, 1e-6);
        setup.attach(
                0,
                model.pointAtStation(0, 0.5),
                true,
                List.of(new MotionSetup.Person(100, LoadingCurve.spring(1e8), length, MotionSetup.Timing.hanging())));
        MotionSystem s = new MotionSystem(setup, 0.25, 1);
        FallingBody body = s.bodies[0];
        double pivot = s.chain.z[body.joint.node];
        body.x = length * Math.sin(angle);
        body.z = pivot - length * Math.cos(angle);
        double before = body.x;
        double last = 0;
        double first = Double.NaN;
        while (true) {
            s.kick();
            s.move();
            if (before > 0 && body.x <= 0) {
                double at = last + (s.time - last) * before / (before - body.x);
                if (!Double.isNaN(first)) {
                    return at - first;
                }
                first = at;
            }
            before = body.x;
            last = s.time;
        }
    }
}
