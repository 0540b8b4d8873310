package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.over;
import static org.lifeline.analysis.explain.Expression.sum;
import static org.lifeline.analysis.explain.Expression.times;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.unit.Dimension;

/** Writes down one span in equilibrium, piece by piece, and keeps the figures that others refer to. */
final class SpanExplanation {
    private static final String SOLUTION = "solution of the equilibrium";

    private final CalculationSheet sheet;
    private final CableFigures cable;
    private final String k;
    private final SpanState span;
    private final List<Figure> lengths = new ArrayList<>();
    private final List<Figure> energies = new ArrayList<>();
    private final List<Figure> elevations = new ArrayList<>();
    private final List<Figure> starts = new ArrayList<>();
    private final List<PieceExplanation.Result> pieces = new ArrayList<>();
    private final Figure run;
    private final Figure rise;
    private final Figure horizontal;
    private Optional<Figure> sag = Optional.empty();
    private List<Expression> firstLink = List.of();

    SpanExplanation(CalculationSheet sheet, CableFigures cable, String k, SpanState span) {
        this.sheet = sheet;
        this.cable = cable;
        this.k = k;
        this.span = span;
        Point a = span.firstSupport();
        Point b = span.secondSupport();
        String from = "positions of the supports";
        run = sheet.given("L_" + k, "run of the span", a.horizontalDistance(b), Dimension.LENGTH, from);
        rise = sheet.given("D_" + k, "rise of the span, up positive", b.z() - a.z(), Dimension.LENGTH, from);
        horizontal = sheet.given("H_" + k, "horizontal tension", span.horizontalTension(), Dimension.FORCE, SOLUTION);
    }

    /**
     * Writes the pieces of the span.
     *
     * @param withEnergies true if the energies of the cable are wanted
     */
    void write(boolean withEnergies) {
        List<CablePiece> list = span.pieces();
        Figure v = sheet.given(
                "V_" + k + ".1",
                "vertical component of the tension where the cable begins, up positive along the line",
                list.get(0).startTension().z(),
                Dimension.FORCE,
                SOLUTION);
        Figure z = sheet.given(
                "z_" + k + ".1",
                "elevation where the cable begins",
                list.get(0).start().z(),
                Dimension.LENGTH,
                "positions of the supports");
        for (int j = 0; j < list.size(); j++) {
            CablePiece piece = list.get(j);
            String kk = k + "." + (j + 1);
            Figure s = sheet.given(
                    "S_" + kk,
                    "unstretched length of piece " + (j + 1),
                    piece.unstretchedLength(),
                    Dimension.LENGTH,
                    SOLUTION);
            starts.add(v);
            elevations.add(z);
            lengths.add(s);
            PieceExplanation.Result r = new PieceExplanation(sheet, cable, horizontal, withEnergies).write(kk, v, s);
            pieces.add(r);
            if (withEnergies) {
                energies.add(writeEnergy(kk, z, s, r));
            }
            if (j + 1 < list.size()) {
                String next = k + "." + (j + 2);
                z = sheet.row("z_" + next, "elevation of the load", sum(z, r.rise()), Dimension.LENGTH, "sum");
                v = writeLoad(piece, kk, next, r.endVertical());
            }
        }
        writeFit();
        if (list.size() == 1) {
            writeSag();
        }
    }

    private Figure writeLoad(CablePiece piece, String kk, String next, Figure before) {
        Figure p = sheet.given("P_" + kk, "load at its end", piece.loadAtEnd(), Dimension.FORCE, "load on the line");
        return sheet.row(
                "V_" + next, "vertical tension behind the load", sum(before, p), Dimension.FORCE, "equilibrium");
    }

    private Figure writeEnergy(String kk, Figure z, Figure s, PieceExplanation.Result r) {
        Expression height = cable.weight().isPresent()
                ? sum(times(z, cable.weight().get(), s), times(r.endVertical(), r.rise()), times(horizontal, r.run()))
                : sum(times(r.endVertical(), r.rise()), times(horizontal, r.run()));
        return sheet.row(
                "E_" + kk,
                "strain energy and potential energy of the piece, above elevation 0",
                minus(height, r.taken().orElseThrow()),
                Dimension.ENERGY,
                "appendix A.2");
    }

    /** The pieces, and what an in-line absorber has grown, fit between the supports. */
    private void writeFit() {
        List<Expression> x = new ArrayList<>();
        List<Expression> z = new ArrayList<>();
        Point start = span.pieces().get(0).start();
        Point end = span.pieces().get(span.pieces().size() - 1).end();
        link(span.firstSupport(), start, "e_" + k + "a", pieces.get(0).startTension(), starts.get(0), x, z);
        firstLink = List.copyOf(x);
        for (PieceExplanation.Result r : pieces) {
            x.add(r.run());
            z.add(r.rise());
        }
        PieceExplanation.Result last = pieces.get(pieces.size() - 1);
        link(end, span.secondSupport(), "e_" + k + "b", last.endTension(), last.endVertical(), x, z);
        sheet.row("ΣX_" + k, "sum of the runs: must be L_" + k, sum(x), Dimension.LENGTH, "compatibility");
        sheet.row("ΣZ_" + k, "sum of the rises: must be D_" + k, sum(z), Dimension.LENGTH, "compatibility");
    }

    private void link(
            Point from,
            Point to,
            String symbol,
            Figure tension,
            Figure vertical,
            List<Expression> x,
            List<Expression> z) {
        Vector3 gap = to.minus(from);
        Vector3 along = span.pieces().get(0).startTension();
        double size = gap.magnitude() * Math.signum(gap.x() * along.x() + gap.y() * along.y());
        if (Math.abs(size) < Tolerances.LENGTH) {
            return;
        }
        Figure e = sheet.given(
                symbol, "growth of the in-line absorber since installation", size, Dimension.LENGTH, SOLUTION);
        x.add(over(times(e, horizontal), tension));
        z.add(over(times(e, vertical), tension));
    }

    private void writeSag() {
        if (cable.weight().isEmpty()) {
            return;
        }
        double slope = rise.value() / run.value();
        double from = starts.get(0).value();
        double touch =
                (horizontal.value() * slope - from) / cable.weight().get().value();
        if (!(touch > 0 && touch < lengths.get(0).value())) {
            return;
        }
        Figure s = sheet.row(
                "S_" + k + "m",
                "unstretched length up to where the cable runs parallel to the chord",
                over(
                        minus(over(times(horizontal, rise), run), starts.get(0)),
                        cable.weight().get()),
                Dimension.LENGTH,
                "vertical tension = H·slope there");
        PieceExplanation.Result r =
                new PieceExplanation(sheet, cable, horizontal, false).write(k + "m", starts.get(0), s);
        sag = Optional.of(sheet.row(
                "f_" + k,
                "sag: from the chord down to the cable there",
                minus(over(times(r.run(), rise), run), r.rise()),
                Dimension.LENGTH,
                "geometry"));
    }

    /**
     * Writes down a point of the cable.
     *
     * @param kk index of the point
     * @param spot where it is
     * @return its elevation
     */
    Figure writePoint(String kk, LineExplanation.Spot spot) {
        int piece = spot.piece();
        Figure s = sheet.given(
                "S_" + kk,
                "unstretched length from the start of the piece to the attachment",
                spot.length(),
                Dimension.LENGTH,
                SOLUTION);
        PieceExplanation.Result r =
                new PieceExplanation(sheet, cable, horizontal, false).write(kk, starts.get(piece), s);
        List<Expression> x = new ArrayList<>();
        for (int j = 0; j < piece; j++) {
            x.add(pieces.get(j).run());
        }
        x.add(r.run());
        sheet.row("a_" + kk, "distance of the attachment from where the cable begins", sum(x), Dimension.LENGTH, "sum");
        return sheet.row(
                "z_" + kk,
                "elevation of the attachment",
                sum(elevations.get(piece), r.rise()),
                Dimension.LENGTH,
                "sum");
    }

    Figure horizontal() {
        return horizontal;
    }

    Figure startVertical() {
        return starts.get(0);
    }

    Figure startTension() {
        return pieces.get(0).startTension();
    }

    Figure endVertical() {
        return pieces.get(pieces.size() - 1).endVertical();
    }

    Figure endTension() {
        return pieces.get(pieces.size() - 1).endTension();
    }

    Figure run() {
        return run;
    }

    Figure rise() {
        return rise;
    }

    /** Elevation where a piece begins. */
    Figure elevation(int piece) {
        return elevations.get(piece);
    }

    /** Horizontal distance from the first support to where a piece begins, as a formula. */
    Expression distance(int piece) {
        List<Expression> x = new ArrayList<>(firstLink);
        for (int j = 0; j < piece; j++) {
            x.add(pieces.get(j).run());
        }
        return sum(x);
    }

    Optional<Figure> sag() {
        return sag;
    }

    List<Figure> lengths() {
        return lengths;
    }

    List<Figure> energies() {
        return energies;
    }
}
