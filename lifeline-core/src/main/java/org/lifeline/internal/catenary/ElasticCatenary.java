package org.lifeline.internal.catenary;

import org.lifeline.model.cable.LoadElongation;

/**
 * One piece of cable between two points where force enters: the elastic catenary, in terms of the tension vector at
 * its start and its unstretched length (Irvine, <i>Cable Structures</i>, 1981, ch. 1, written without cancellation).
 *
 * <p>With t = (h, v) at the start, v + w s at arc length s, T = |t|, and a rope that stretches by
 * ε(T) = a + b T, the stretched vector is ∫(1 + ε) t/T ds. All integrals reduce to
 *
 * <pre>
 *   A = ∫ds/T    = (2 s/(T₁+T₂)) · atanh(q)/q,  q = w s/(T₁+T₂)
 *   B = ∫ds/T³   = s (H² + T₁T₂ − v₁v₂)/(H² T₁T₂(T₁+T₂))
 *   M = ∫v ds/T³ = s (v₁+v₂)/((T₁+T₂) T₁T₂)
 *   (T₂−T₁)/w    = s (v₁+v₂)/(T₁+T₂)
 * </pre>
 *
 * none of which divides by w or subtracts nearly equal numbers, so the same lines serve a heavy slack cable, a taut
 * light one and a bar without weight. A rope with several straight pieces in its load–elongation curve is split where
 * its tension passes a corner of the curve.
 *
 * <p>Holds the results of the last evaluation in its fields, so that iterations allocate nothing. Not thread-safe.
 */
public final class ElasticCatenary {
    private static final double SERIES_LIMIT = 0.05;

    private final LoadElongation law;
    private final int pieces;
    private final double compliance;

    /** ∫ds/T of the last evaluation, where the rope is linear [m/N]. */
    private double inverse;

    /** Stretched vector from start to end [m]. */
    public double dx;

    public double dy;
    public double dz;

    /** Derivative of the stretched vector by the start tension [m/N]; symmetric, positive definite. */
    public double kxx;

    public double kxy;
    public double kxz;
    public double kyy;
    public double kyz;
    public double kzz;

    /** Derivative of the stretched vector by the unstretched length at held start tension [-]. */
    public double ex;

    public double ey;
    public double ez;

    /** Tension magnitudes at start and end [N]. */
    public double startTension;

    public double endTension;

    /** Strain energy [J]. */
    public double strainEnergy;

    /** Complementary energy ∫(T + ∫ε dT) ds [J]. */
    public double complementary;

    public ElasticCatenary(LoadElongation law) {
        this.law = law;
        this.pieces = law.pieces();
        this.compliance = law.compliance(0);
    }

    public LoadElongation law() {
        return law;
    }

    /**
     * Evaluates the stretched vector and its derivatives.
     *
     * @param tx start tension along x [N]
     * @param ty start tension along y [N]
     * @param tz start tension along z [N]
     * @param s unstretched length [m], not negative
     * @param w weight per unstretched length [N/m]
     */
    public void evaluate(double tx, double ty, double tz, double s, double w) {
        double h2 = tx * tx + ty * ty;
        double v1 = tz;
        double v2 = tz + w * s;
        double t1 = Math.sqrt(h2 + v1 * v1);
        double t2 = Math.sqrt(h2 + v2 * v2);
        startTension = t1;
        endTension = t2;
        if (pieces == 1) {
            linear(tx, ty, h2, v1, v2, s, w);
        } else {
            split(tx, ty, h2, v1, v2, s, w);
        }
        double stretch = pieces == 1 ? compliance + 1 / t2 : (1 + law.strain(t2)) / t2;
        ex = stretch * tx;
        ey = stretch * ty;
        ez = stretch * v2;
    }

    private void linear(double tx, double ty, double h2, double v1, double v2, double s, double w) {
        double t1 = startTension;
        double t2 = endTension;
        double perSum = 1 / (t1 + t2);
        double perAll = perSum / (t1 * t2);
        double a = inverseTension(h2, v1, v2, s, w, t1, t2);
        inverse = a;
        double b = s * inverseCubeShare(h2, v1, v2, t1, t2) * perAll;
        double m = s * (v1 + v2) * perAll;
        double bs = compliance * s;
        double run = a + bs;
        dx = tx * run;
        dy = ty * run;
        dz = s * (v1 + v2) * (perSum + 0.5 * compliance);
        kxx = a - tx * tx * b + bs;
        kxy = -tx * ty * b;
        kyy = a - ty * ty * b + bs;
        kxz = -tx * m;
        kyz = -ty * m;
        kzz = h2 * b + bs;
    }

    private void split(double tx, double ty, double h2, double v1, double v2, double s, double w) {
        dx = 0;
        dy = 0;
        dz = 0;
        kxx = 0;
        kxy = 0;
        kyy = 0;
        kxz = 0;
        kyz = 0;
        kzz = 0;
        if (s < 0) {
            // Newton's method may try a negative length: the same integrals the other way round.
            walk(tx, ty, h2, v2, v1, -s, w);
            negate();
        } else {
            walk(tx, ty, h2, v1, v2, s, w);
        }
    }

    private void walk(double tx, double ty, double h2, double from, double to, double s, double w) {
        double left = s;
        double va = from;
        while (left > 0) {
            double vb = nextCorner(h2, va, to);
            double part = vb == to || w == 0 ? left : Math.min(left, (vb - va) / w);
            if (part >= left) {
                vb = to;
                part = left;
            }
            addPiece(tx, ty, h2, va, vb, part, w);
            left -= part;
            va = vb;
        }
    }

    private void negate() {
        dx = -dx;
        dy = -dy;
        dz = -dz;
        kxx = -kxx;
        kxy = -kxy;
        kyy = -kyy;
        kxz = -kxz;
        kyz = -kyz;
        kzz = -kzz;
    }

    /** The vertical component, above va and at most v2, at which the tension next passes a corner of the curve. */
    private double nextCorner(double h2, double va, double v2) {
        double best = v2;
        for (int j = 1; j < pieces; j++) {
            double corner = law.lowerTension(j);
            double square = corner * corner - h2;
            if (square > 0) {
                double v = Math.sqrt(square);
                if (-v > va && -v < best) {
                    best = -v;
                }
                if (v > va && v < best) {
                    best = v;
                }
            }
        }
        return best;
    }

    private int pieceBetween(double h2, double va, double vb) {
        double mid = 0.5 * (va + vb);
        return law.piece(Math.sqrt(h2 + mid * mid));
    }

    private void addPiece(double tx, double ty, double h2, double va, double vb, double s, double w) {
        int j = pieceBetween(h2, va, vb);
        double c = law.compliance(j);
        double one = 1 + law.offset(j);
        double t1 = Math.sqrt(h2 + va * va);
        double t2 = Math.sqrt(h2 + vb * vb);
        double sum = t1 + t2;
        double a = one * inverseTension(h2, va, vb, s, w, t1, t2);
        double b = one * s * inverseCubeShare(h2, va, vb, t1, t2) / (sum * t1 * t2);
        double m = one * s * (va + vb) / (sum * t1 * t2);
        double cs = c * s;
        double run = a + cs;
        dx += tx * run;
        dy += ty * run;
        dz += s * (va + vb) * (one / sum + 0.5 * c);
        kxx += a - tx * tx * b + cs;
        kxy += -tx * ty * b;
        kyy += a - ty * ty * b + cs;
        kxz += -tx * m;
        kyz += -ty * m;
        kzz += h2 * b + cs;
    }

    /**
     * Evaluates the energies of the piece whose stretched vector was evaluated last.
     *
     * @param tx start tension along x [N]
     * @param ty start tension along y [N]
     * @param tz start tension along z [N]
     * @param s unstretched length [m]
     * @param w weight per unstretched length [N/m]
     */
    public void energies(double tx, double ty, double tz, double s, double w) {
        double h2 = tx * tx + ty * ty;
        double v2 = tz + w * s;
        if (pieces == 1) {
            double half = 0.5 * compliance * intSquare(h2, tz, v2, s);
            strainEnergy = half;
            complementary = 0.5 * (slope(tz, v2, s, startTension, endTension) + h2 * inverse) + half;
            return;
        }
        strainEnergy = 0;
        complementary = 0;
        double left = s;
        double va = tz;
        while (left > 0) {
            double vb = nextCorner(h2, va, v2);
            double part = vb == v2 || w == 0 ? left : Math.min(left, (vb - va) / w);
            if (part >= left) {
                vb = v2;
                part = left;
            }
            addEnergies(h2, va, vb, part, w);
            left -= part;
            va = vb;
        }
    }

    private void addEnergies(double h2, double va, double vb, double s, double w) {
        int j = pieceBetween(h2, va, vb);
        double b = law.compliance(j);
        double a = law.offset(j);
        double corner = law.lowerTension(j);
        double constant = law.complementaryEnergy(corner) - corner * (a + 0.5 * b * corner);
        double t1 = Math.sqrt(h2 + va * va);
        double t2 = Math.sqrt(h2 + vb * vb);
        double half = 0.5 * b * intSquare(h2, va, vb, s);
        strainEnergy += half - constant * s;
        double intTension = 0.5 * (slope(va, vb, s, t1, t2) + h2 * inverseTension(h2, va, vb, s, w, t1, t2));
        complementary += (1 + a) * intTension + half + constant * s;
    }

    /** The change of v T over w: ∫T ds is half of it and of h²∫ds/T. */
    private static double slope(double va, double vb, double s, double t1, double t2) {
        return s * (t2 * (t1 + t2) + va * (va + vb)) / (t1 + t2);
    }

    /** ∫T² ds. */
    private static double intSquare(double h2, double va, double vb, double s) {
        return s * (h2 + (va * va + va * vb + vb * vb) / 3);
    }

    /** A = ∫ds/T. */
    public static double inverseTension(double h2, double v1, double v2, double s, double w, double t1, double t2) {
        double sum = t1 + t2;
        double perSum = 1 / sum;
        double q = w * s * perSum;
        double ratio;
        if (Math.abs(q) < SERIES_LIMIT) {
            ratio = areaTangent(q * q);
        } else {
            double low = v1 < 0 ? h2 / (t1 - v1) : t1 + v1;
            double high = v2 > 0 ? h2 / (t2 + v2) : t2 - v2;
            ratio = 0.5 * StrictMath.log((sum + w * s) / (low + high)) / q;
        }
        return 2 * s * perSum * ratio;
    }

    /** atanh(q)/q by its series, from q²; in pairs, which do not wait for each other. */
    private static double areaTangent(double p) {
        double p2 = p * p;
        return 1 + p * (1 / 3.0) + p2 * (1 / 5.0 + p * (1 / 7.0) + p2 * (1 / 9.0 + p * (1 / 11.0) + p2 * (1 / 13.0)));
    }

    /** B T₁T₂(T₁+T₂)/s with B = ∫ds/T³. */
    public static double inverseCubeShare(double h2, double v1, double v2, double t1, double t2) {
        double product = t1 * t2;
        double vv = v1 * v2;
        return vv > 0 ? 1 + (h2 + v1 * v1 + v2 * v2) / (product + vv) : (h2 + product - vv) / h2;
    }
}
