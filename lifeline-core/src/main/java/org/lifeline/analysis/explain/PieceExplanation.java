package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.artanh;
import static org.lifeline.analysis.explain.Expression.half;
import static org.lifeline.analysis.explain.Expression.length;
import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.number;
import static org.lifeline.analysis.explain.Expression.over;
import static org.lifeline.analysis.explain.Expression.root;
import static org.lifeline.analysis.explain.Expression.square;
import static org.lifeline.analysis.explain.Expression.sum;
import static org.lifeline.analysis.explain.Expression.times;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.unit.Dimension;
import org.lifeline.internal.numeric.Elementary;

/**
 * Writes down a piece of cable as an elastic catenary: in the form of {@code src/docs/theory/mechanics.md}, section 2,
 * which has no differences of nearly equal numbers.
 */
final class PieceExplanation {
    private static final String CATENARY = "Irvine 1981, ch. 1; appendix A.1";

    private final CalculationSheet sheet;
    private final CableFigures cable;
    private final Figure horizontal;
    private final boolean energies;

    /** Horizontal and vertical extent of a piece, its end tension, and the energy figures if they are wanted. */
    record Result(
            Figure startTension,
            Figure endVertical,
            Figure endTension,
            Figure run,
            Figure rise,
            Optional<Figure> taken) {}

    PieceExplanation(CalculationSheet sheet, CableFigures cable, Figure horizontal, boolean energies) {
        this.sheet = sheet;
        this.cable = cable;
        this.horizontal = horizontal;
        this.energies = energies;
    }

    /**
     * Writes a piece.
     *
     * @param k index of the piece
     * @param vertical vertical component of the tension at its start
     * @param unstretched its unstretched length
     */
    Result write(String k, Figure vertical, Figure unstretched) {
        List<Part> parts = parts(vertical.value(), unstretched.value());
        if (parts.size() == 1) {
            return part(k, vertical, unstretched, parts.get(0).piece());
        }
        List<Result> results = new ArrayList<>();
        Figure v = vertical;
        List<Expression> used = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            String kk = k + (char) ('a' + i);
            Figure length;
            if (i < parts.size() - 1) {
                Figure corner = cable.corner().get(parts.get(i).corner());
                Expression size = root(minus(square(corner), square(horizontal)));
                Expression at = parts.get(i).end() < 0 ? minus(number(0), size) : sum(size);
                Figure bound = sheet.row(
                        "V_" + kk + "c",
                        "vertical tension where the tension passes a corner of the curve",
                        at,
                        Dimension.FORCE,
                        "curve");
                length = sheet.row(
                        "S_" + kk,
                        "unstretched length up to there",
                        over(minus(bound, v), cable.weight().orElseThrow()),
                        Dimension.LENGTH,
                        "equilibrium");
                used.add(length);
            } else {
                length = sheet.row(
                        "S_" + kk, "unstretched length left", minus(unstretched, sum(used)), Dimension.LENGTH, "rest");
            }
            Result r = part(kk, v, length, parts.get(i).piece());
            results.add(r);
            v = r.endVertical();
        }
        return together(k, results);
    }

    private Result together(String k, List<Result> results) {
        Figure run = sheet.row(
                "X_" + k,
                "run of the piece",
                sum(results.stream().map(Result::run).toList()),
                Dimension.LENGTH,
                "sum of its parts");
        Figure rise = sheet.row(
                "Z_" + k,
                "rise of the piece",
                sum(results.stream().map(Result::rise).toList()),
                Dimension.LENGTH,
                "sum of its parts");
        Optional<Figure> taken = energies
                ? Optional.of(sheet.row(
                        "C_" + k,
                        "complementary energy of the piece",
                        sum(results.stream().map(r -> r.taken().orElseThrow()).toList()),
                        Dimension.ENERGY,
                        "sum of its parts"))
                : Optional.empty();
        Result last = results.get(results.size() - 1);
        return new Result(results.get(0).startTension(), last.endVertical(), last.endTension(), run, rise, taken);
    }

    private Result part(String k, Figure v, Figure s, int lawPiece) {
        Figure ea = cable.stiffness().get(lawPiece);
        Optional<Figure> offset = cable.offset().get(lawPiece);
        Figure t = sheet.row("T_" + k, "tension at its start", length(horizontal, v), Dimension.FORCE, "components");
        Figure v2 = t;
        Figure t2 = t;
        Expression integral;
        if (cable.weight().isPresent()) {
            Figure w = cable.weight().get();
            v2 = sheet.row(
                    "V′_" + k, "vertical tension at its end", sum(v, times(w, s)), Dimension.FORCE, "equilibrium");
            t2 = sheet.row("T′_" + k, "tension at its end", length(horizontal, v2), Dimension.FORCE, "components");
            Figure q = sheet.row(
                    "q_" + k,
                    "weight over the sum of its end tensions",
                    over(times(w, s), sum(t, t2)),
                    Dimension.RATIO,
                    CATENARY);
            integral = over(times(number(2), artanh(q)), w);
        } else {
            v2 = sheet.row("V′_" + k, "vertical tension at its end", sum(v), Dimension.FORCE, "equilibrium");
            t2 = sheet.row("T′_" + k, "tension at its end", sum(t), Dimension.FORCE, "no weight");
            integral = over(s, t);
        }
        Figure a = sheet.row("A_" + k, "∫ds/T along the piece", integral, Dimension.LENGTH_PER_FORCE, CATENARY);
        Expression stretch = over(s, ea);
        Expression own = offset.isPresent() ? times(sum(number(1), offset.get()), a) : a;
        Figure x = sheet.row(
                "X_" + k, "run of the piece", times(horizontal, sum(own, stretch)), Dimension.LENGTH, CATENARY);
        Expression one = offset.isPresent() ? sum(number(1), offset.get()) : number(1);
        Figure z = sheet.row(
                "Z_" + k,
                "rise of the piece, up positive",
                times(s, sum(v, v2), sum(over(one, sum(t, t2)), over(number(1), times(number(2), ea)))),
                Dimension.LENGTH,
                CATENARY);
        Optional<Figure> c =
                energies ? Optional.of(complementary(k, new Ends(v, v2, t, t2), s, a, lawPiece)) : Optional.empty();
        return new Result(t, v2, t2, x, z, c);
    }

    /** Vertical tension and tension at the two ends of a piece. */
    private record Ends(Figure vertical, Figure endVertical, Figure tension, Figure endTension) {}

    private Figure complementary(String k, Ends e, Figure s, Figure reciprocal, int lawPiece) {
        Expression tensions = sum(e.tension(), e.endTension());
        Expression verticals = sum(e.vertical(), e.endVertical());
        Expression slope =
                over(times(s, sum(times(e.endTension(), tensions), times(e.vertical(), verticals))), tensions);
        Figure i = sheet.row(
                "I_" + k,
                "∫T ds along the piece",
                half(sum(slope, times(square(horizontal), reciprocal))),
                Dimension.ENERGY,
                "appendix A.2");
        Expression squares = sum(square(e.vertical()), times(e.vertical(), e.endVertical()), square(e.endVertical()));
        Figure j = sheet.row(
                "J_" + k,
                "∫T² ds along the piece",
                times(s, sum(square(horizontal), over(squares, number(3)))),
                Dimension.FORCE_SQUARED_LENGTH,
                "appendix A.2");
        Figure ea = cable.stiffness().get(lawPiece);
        Optional<Figure> offset = cable.offset().get(lawPiece);
        Expression own = offset.isPresent() ? times(sum(number(1), offset.get()), i) : i;
        List<Expression> terms = new ArrayList<>(List.of(own, over(j, times(number(2), ea))));
        cable.constant().get(lawPiece).ifPresent(c -> terms.add(times(c, s)));
        return sheet.row("C_" + k, "complementary energy of the piece", sum(terms), Dimension.ENERGY, "appendix A.2");
    }

    /**
     * A part of a piece that stays within one straight piece of the load–elongation curve.
     *
     * @param piece number of the straight piece, from 0
     * @param end vertical tension at its end
     * @param corner number of the corner that ends it, or −1 for the end of the cable
     */
    private record Part(int piece, double end, int corner) {}

    private List<Part> parts(double v, double s) {
        double w = cable.weight().map(Figure::value).orElse(0.0);
        double end = v + w * s;
        if (cable.law().isLinear()) {
            return List.of(new Part(0, end, -1));
        }
        List<Part> list = new ArrayList<>();
        double from = v;
        while (true) {
            double to = end;
            int corner = -1;
            for (int j = 1; j < cable.stiffness().size(); j++) {
                double c = cable.corner().get(j).value();
                double square = c * c - horizontal.value() * horizontal.value();
                for (double sign = -1; square > 0 && sign <= 1; sign += 2) {
                    double at = sign * Math.sqrt(square);
                    if (at > from && at < to) {
                        to = at;
                        corner = j;
                    }
                }
            }
            list.add(new Part(pieceAt(0.5 * (from + to)), to, corner));
            if (corner < 0) {
                return list;
            }
            from = to;
        }
    }

    private int pieceAt(double vertical) {
        double t = Elementary.hypot(horizontal.value(), vertical);
        int j = cable.stiffness().size() - 1;
        while (j > 0 && t < cable.corner().get(j).value()) {
            j--;
        }
        return j;
    }
}
