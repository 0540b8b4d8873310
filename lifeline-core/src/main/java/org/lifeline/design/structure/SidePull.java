package org.lifeline.design.structure;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;

/**
 * Loads on the supports when the connection pulls at an angle from the vertical in the plane across the line.
 *
 * <p>The loaded span swings about the chord between its two supports until it lies in the plane of its chord and the pull. A
 * light cable between supports that stay where they are is then the same triangle in a turned plane: its tensions keep
 * their magnitude, the other spans keep theirs, and the forces of the loaded span on its two supports turn with it. Here they
 * are turned about the chord by an angle ψ with sin ψ = sin φ/cos β, β the slope of the chord, so that the pull has the
 * component P sin φ across the line.
 *
 * <p>Approximations: the weight of the cable in the loaded span, and that of workers who hang in it, turn as well (more
 * across the line, by at most their weight times sin ψ, and less down); a sloping span also gets a component of the pull along
 * the line of P sin β cos β (1 − cos ψ); a support that yields across the line would let the tension fall, so the turned forces
 * are on the safe side there. The force of the connection is that of the vertical fall. Signs: φ is positive when the pull
 * leans to the left of one who looks along the line from its first support. Derivation and limits: theory, chapter on loads
 * across the line.
 *
 * @since 1.0.0
 */
public final class SidePull {
    /** Chord steeper than this has no swing about it worth the name [-], cosine of the slope. */
    private static final double LEAST_COSINE = 1e-3;

    private SidePull() {}

    /**
     * Forces of the line on all its supports with the pull at an angle.
     *
     * @param arrest the arrest under a vertical pull
     * @param angle angle φ from the vertical [rad], positive to the left, below 90° either way
     * @return force on each support, components in [N], without model factors; unmodifiable
     */
    public static List<Vector3> forces(ArrestResult arrest, double angle) {
        Violations.required("arrest", arrest);
        List<SupportReaction> reactions = arrest.supports();
        List<Vector3> forces = new ArrayList<>();
        reactions.forEach(r -> forces.add(r.vector()));
        if (angle == 0) {
            return List.copyOf(forces);
        }
        if (arrest.fall().place().isAtSupport()) {
            atSupport(arrest, angle, forces);
            return List.copyOf(forces);
        }
        SpanState span = arrest.peak().span(arrest.span());
        Turn turn = turn(span, angle);
        List<CablePiece> pieces = span.pieces();
        int first = span.number() - 1;
        Vector3 onFirst = pieces.get(0).startTension();
        Vector3 onSecond = pieces.get(pieces.size() - 1).endTension().times(-1);
        double peak = peak(arrest, span);
        forces.set(first, forces.get(first).plus(turn.change(onFirst).times(peak)));
        forces.set(first + 1, forces.get(first + 1).plus(turn.change(onSecond).times(peak)));
        return List.copyOf(forces);
    }

    /**
     * An arrest in time holds its cable as it is at the lowest point and its forces as peaks: the largest tension of all over
     * the largest in the span at the lowest point, on the safe side.
     */
    private static double peak(ArrestResult arrest, SpanState span) {
        return arrest.method() == Method.TRANSIENT ? Math.max(1, arrest.maximumTension() / span.maximumTension()) : 1;
    }

    /** The pull goes straight into the support, which stays where it is. */
    private static void atSupport(ArrestResult arrest, double angle, List<Vector3> forces) {
        int at = arrest.line().supportOf(arrest.fall().place());
        SpanState span = arrest.peak().span(arrest.span());
        Vector3 left = left(span);
        double p = arrest.lineLoad();
        Vector3 change = new Vector3(
                p * StrictMath.sin(angle) * left.x(),
                p * StrictMath.sin(angle) * left.y(),
                p * (1 - StrictMath.cos(angle)));
        forces.set(at, forces.get(at).plus(change));
    }

    /** Horizontal unit vector to the left of the span. */
    private static Vector3 left(SpanState span) {
        Vector3 run = span.secondSupport().minus(span.firstSupport());
        return new Vector3(-run.y(), run.x(), 0).times(1 / run.horizontal());
    }

    private static Turn turn(SpanState span, double angle) {
        Point a = span.firstSupport();
        Vector3 chord = span.secondSupport().minus(a);
        double cosine = Math.max(chord.horizontal() / chord.magnitude(), LEAST_COSINE);
        double sine = Math.max(-1, Math.min(1, StrictMath.sin(angle) / cosine));
        // About the chord from first to second support, a right-handed turn takes "down" to the left.
        return new Turn(chord.times(1 / chord.magnitude()), StrictMath.asin(sine));
    }

    /**
     * A turn about an axis (Rodrigues' formula).
     *
     * @param axis unit vector [-]
     * @param angle angle [rad], right-handed
     */
    private record Turn(Vector3 axis, double angle) {
        Vector3 change(Vector3 v) {
            Vector3 across = axis.cross(v);
            // (1 − cos ψ) from the half angle, without cancellation.
            double versine = 2 * StrictMath.sin(angle / 2) * StrictMath.sin(angle / 2);
            return across.times(StrictMath.sin(angle)).plus(axis.cross(across).times(versine));
        }
    }
}
