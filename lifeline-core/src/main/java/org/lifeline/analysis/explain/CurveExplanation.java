package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.half;
import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.number;
import static org.lifeline.analysis.explain.Expression.over;
import static org.lifeline.analysis.explain.Expression.sum;
import static org.lifeline.analysis.explain.Expression.times;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.unit.Dimension;
import org.lifeline.model.absorber.LoadingCurve;

/** Writes down a loading curve up to an extension: its corners, the work done, the extension that goes with a force. */
final class CurveExplanation {
    private static final String DESIGN = "design";

    private final CalculationSheet sheet;
    private final LoadingCurve curve;
    private final String k;
    private final String source;
    private final List<Figure> extensions = new ArrayList<>();
    private final List<Figure> forces = new ArrayList<>();

    CurveExplanation(CalculationSheet sheet, LoadingCurve curve, String k) {
        this(sheet, curve, k, DESIGN);
    }

    /** A curve whose corners do not come from the design as they stand: with their source. */
    CurveExplanation(CalculationSheet sheet, LoadingCurve curve, String k, String source) {
        this.sheet = sheet;
        this.curve = curve;
        this.k = k;
        this.source = source;
    }

    /** Writes the corners up to and including the first one that an extension does not pass. */
    void writeCorners(double extension) {
        List<LoadingCurve.Corner> corners = curve.corners();
        for (int i = 0; i < corners.size(); i++) {
            LoadingCurve.Corner c = corners.get(i);
            extensions.add(sheet.given(
                    "x_" + k + i,
                    "extension at corner " + i + " of the loading curve",
                    c.extension(),
                    Dimension.LENGTH,
                    DESIGN));
            forces.add(sheet.given("F_" + k + i, "force there", c.force(), Dimension.FORCE, source));
            if (c.extension() >= extension && extension > 0) {
                break;
            }
        }
    }

    /** Number of the corner at which the piece begins in which an extension lies. */
    private int piece(double extension) {
        List<LoadingCurve.Corner> corners = curve.corners();
        int i = 0;
        while (i + 1 < corners.size() && corners.get(i + 1).extension() < extension) {
            i++;
        }
        return i;
    }

    /** Work up to an extension at which a force acts, by trapezoids; a force beyond the curve, at a rigid stop, does none. */
    Expression work(Figure extension, Figure force, double si) {
        if (si <= 0) {
            return number(0);
        }
        int last = piece(si);
        List<Expression> terms = new ArrayList<>();
        for (int i = 0; i < last; i++) {
            terms.add(trapezoid(forces.get(i), forces.get(i + 1), extensions.get(i), extensions.get(i + 1)));
        }
        Figure there = atRigidStop(si) ? forces.get(last + 1) : force;
        terms.add(trapezoid(forces.get(last), there, extensions.get(last), extension));
        return sum(terms);
    }

    private static Expression trapezoid(Expression f1, Expression f2, Expression x1, Expression x2) {
        return times(half(sum(f1, f2)), minus(x2, x1));
    }

    /** Work up to the corner at which the piece begins in which an extension lies. */
    Expression workToPiece(double si) {
        int last = piece(si);
        List<Expression> terms = new ArrayList<>();
        for (int i = 0; i < last; i++) {
            terms.add(trapezoid(forces.get(i), forces.get(i + 1), extensions.get(i), extensions.get(i + 1)));
        }
        return terms.isEmpty() ? number(0) : sum(terms);
    }

    /** Extension at which the piece begins in which an extension lies. */
    Figure startOfPiece(double si) {
        return extensions.get(piece(si));
    }

    /** Tells whether an extension is all that there is: at a rigid stop the force may be any above that of the curve. */
    boolean atRigidStop(double si) {
        return isAtRigidStop(curve, si);
    }

    /** The same of a curve that is not written. */
    static boolean isAtRigidStop(LoadingCurve curve, double si) {
        return si > 0 && si >= curve.maximumExtension() && Double.isInfinite(curve.stopStiffness());
    }

    /** Tells whether an extension lies on a plateau, short of a rigid stop. */
    boolean onPlateau(double si) {
        int i = piece(si);
        return si > 0
                && !atRigidStop(si)
                && i + 1 < forces.size()
                && forces.get(i).value() == forces.get(i + 1).value();
    }

    /** The extension that goes with a force, where the force rises; empty at a rigid start, on a plateau, at a rigid stop. */
    Optional<Expression> extensionAt(Figure force, double si) {
        int i = piece(si);
        if (si <= 0 || onPlateau(si) || atRigidStop(si)) {
            return Optional.empty();
        }
        Expression beyond = minus(force, forces.get(i));
        if (i + 1 < curve.corners().size()) {
            Expression slope =
                    over(minus(extensions.get(i + 1), extensions.get(i)), minus(forces.get(i + 1), forces.get(i)));
            return Optional.of(sum(extensions.get(i), times(beyond, slope)));
        }
        Figure stop = sheet.given(
                "k_" + k,
                "stiffness behind the last corner",
                curve.stopStiffness(),
                Dimension.FORCE_PER_LENGTH,
                "design");
        return Optional.of(sum(extensions.get(i), over(beyond, stop)));
    }
}
