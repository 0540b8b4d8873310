package org.lifeline.report.appendix;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * The theory that the calculation cites, short enough to be printed with it: equations, sources, limits. The sections are
 * numbered A.1 … A.7; calculation sheets cite them by these numbers.
 *
 * @since 1.0.0
 */
public final class TheoryAppendix {
    private TheoryAppendix() {}

    /**
     * The appendix.
     *
     * @param inTime true if arrests were followed in time
     * @return the section
     */
    public static ReportSection section(boolean inTime) {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(
                new ReportBlock.Paragraph("What the calculation cites as A.1 to A.7. z points up; positions of supports"
                        + " are as installed; T is the tension, H its horizontal component, V its vertical component (up positive), a"
                        + " prime marks the end of a piece of cable."));
        add(blocks, "A.1 A piece of cable", PIECE);
        add(blocks, "A.2 Energies of a piece of cable", ENERGIES);
        add(blocks, "A.3 The whole line", LINE);
        add(blocks, "A.4 The installed state and temperature", INSTALLED);
        add(blocks, "A.5 The arrest by energy balance", BALANCE);
        add(blocks, "A.6 The arrest in time", inTime ? MOTION : NO_MOTION);
        blocks.add(comparison());
        add(blocks, "A.7 Several workers, supports, attachments that run", CASES);
        return new ReportSection("Appendix A: theory", 1, blocks);
    }

    private static void add(List<ReportBlock> blocks, String heading, List<String> items) {
        TableBuilder t = new TableBuilder(heading).text("Equation").text("What it says, and where it comes from");
        for (int i = 0; i < items.size(); i += 2) {
            t.row(items.get(i), items.get(i + 1));
        }
        blocks.add(t.build());
    }

    private static final List<String> PIECE = List.of(
            "dt/ds = w ẑ",
            "equilibrium of an element of unstretched length ds that carries its weight w ds only: H is constant, V grows"
                    + " by w s",
            "dr/ds = (1 + ε(T)) t/T",
            "no bending stiffness, so the cable points along the tension vector t; ε is small or not (elastic catenary:"
                    + " Irvine, Cable Structures, MIT Press 1981, ch. 1)",
            "ε = a + T/EA",
            "the load–elongation law; a is 0 for a constant stiffness EA; where the law has corners, the piece is split",
            "A = ∫ds/T = (2/w) artanh(w S/(T + T′))",
            "S the unstretched length; S/T without weight",
            "X = H ((1 + a) A + S/EA)",
            "run of the piece",
            "Z = S (V + V′) ((1 + a)/(T + T′) + 1/(2 EA))",
            "rise of the piece",
            "sag = (H slope − V)/w along the cable, there the drop below the chord",
            "the sag is where the cable runs parallel to its chord");

    private static final List<String> ENERGIES = List.of(
            "I = ∫T ds = ½ [S (T′(T + T′) + V (V + V′))/(T + T′) + H² A]",
            "integral of the tension, in closed form",
            "J = ∫T² ds = S (H² + (V² + V V′ + V′²)/3)",
            "integral of its square",
            "C = (1 + a) I + J/(2 EA)",
            "complementary energy ∫(T + ∫ε dT) ds",
            "E = z₁ w S + V′ Z + H X − C",
            "strain energy and potential energy of the weight together, z₁ the elevation of the start: by parts with dV = w ds"
                    + " and H dX + V dz = T (1 + ε) ds");

    private static final List<String> LINE = List.of(
            "ΣX, ΣZ = from support to support",
            "compatibility: pieces of a span, and an in-line absorber at an end, reach from support to support",
            "u = (R − Rᵢ)/k",
            "displacement of an elastic support, component by component; R the force of the line on it, Rᵢ as installed",
            "V behind − V before = P",
            "a load P hangs on the cable",
            "e^(−μθ) ≤ T₂/T₁ ≤ e^(μθ)",
            "passage with friction: the cable sticks within, slips at a bound; θ the angle turned there in space (Euler 1769,"
                    + " Eytelwein 1808). Free: T₂ = T₁; clamped: no slip",
            "Q = Σ ∫ΔΨ dq, Ψ = T + ∫ε dT",
            "heat of friction: q is the unstretched length that passes the support, ΔΨ the difference of Ψ across it; followed"
                    + " step by step along the path of the load",
            "T ≤ F(e)",
            "an in-line absorber is elastic below its curve F, yields along it, and gives back only the elastic part; at its end"
                    + " the stop takes over");

    private static final List<String> INSTALLED = List.of(
            "Ψ = w z + constant",
            "while it is tensioned the cable runs freely over every intermediate support; one number fixes all tensions",
            "λ = 1 + α (t − tᵢ)",
            "factor on unstretched lengths at temperature t; weights go with 1/λ");

    private static final List<String> BALANCE = List.of(
            "h = max(0, ℓ − (z of the line − z of the harness))",
            "free fall; ℓ the taut length of the connecting subsystem; self-retracting: up to lock-up",
            "M g (h + δ + x) = W + ∫F dx",
            "at the lowest point nobody moves: what the fall set free went into the line and the connection. M the mass of"
                    + " those who fall, δ the descent of the attachment, x the deployment",
            "P = F(x)",
            "the force of the connecting subsystem pulls on the line",
            "W = ∫P dδ = ΔE + Σ P(hanging) Δz + Q + ½ Σ (R² − Rᵢ²)/k + Σ ∫F de",
            "work on the line along its static path: cable, those who hang, heat of friction, elastic supports, in-line"
                    + " absorbers; counted both ways where there is friction",
            "x = M g (1 + √(1 + 2 h k/(M g)))/k",
            "limit case: a mass dropped on a spring k (Thomson, Vibration Theory and Applications," + " ex. 4.6-1)",
            "limits",
            "inertia of the line, waves and rebound are left out; the body is a rigid mass that falls straight down; absorbers do"
                    + " not depend on speed; losses in harness and knots are left out");

    private static final List<String> NO_MOTION = List.of(
            "not used", "no arrest of this report was followed in time; the comparison below says what that may hide");

    private static final List<String> MOTION = List.of(
            "m dv/dt = ΣT t/T + m g",
            "the cable as lumped masses on straight segments that only pull; the masses are those of half the segments beside",
            "T = EA (ε + τ dε/dt)",
            "internal damping with the damping time τ of the design; no drag of the air",
            "leapfrog in time",
            "velocities live half a step before and behind positions; the energies of the motion are added up and their drift is"
                    + " stated",
            "halving of segments",
            "meshes are halved until peaks agree; what finer meshes may still add is bounded from the last changes and added to"
                    + " the value that is judged",
            "100 Hz",
            "forces are given raw and through a low-pass filter of second order at 100 Hz, as force records of drop tests are"
                    + " (recalled, not seen)");

    private static final List<String> CASES = List.of(
            "workers who fall together",
            "alike: one extension, forces add. Unlike: the share of the line's work of each is bounded from below, so force and"
                    + " deployment are bounds on the safe side",
            "one after the other",
            "those who fell before hang at rest where they came to; the next falls from the line as they left it",
            "a fall at a support",
            "the connection pulls on the support itself; the cable takes part only as the support yields",
            "an attachment that can run",
            "computed running (to where tensions are equal) and held at its station; each quantity takes the worse",
            "a swing",
            "ℓ (1 − cos θ) = drop: a pendulum about the place where the attachment is held or comes to rest");

    /** Ratios of arrests in time to energy balances; the values of the table in theory/arrest.md, section 5. */
    private static ReportBlock comparison() {
        TableBuilder t = new TableBuilder(
                        "Arrest in time over energy balance, 2000 random plausible lines of steel rope")
                .text("Quantity")
                .number("5 %")
                .number("Median")
                .number("95 %")
                .number("99 %")
                .number("Largest");
        for (Ratio r : Ratio.values()) {
            t.row(r.words, r.share5, r.median, r.share95, r.share99, r.largest);
        }
        return t.build();
    }

    /** A row of the comparison. */
    enum Ratio {
        END_LOAD("end anchor load", "0.980", "1.082", "1.258", "1.325", "1.490"),
        POST_LOAD("load on a post", "0.934", "1.131", "1.521", "1.772", "3.149"),
        TENSION("tension", "0.978", "1.091", "1.258", "1.320", "1.586"),
        ARREST_FORCE("arrest force", "1.000", "1.000", "1.096", "1.433", "2.156"),
        FALL_DISTANCE("fall distance", "0.931", "0.992", "0.998", "0.999", "0.999");

        private final String words;
        private final String share5;
        private final String median;
        private final String share95;
        private final String share99;
        private final String largest;

        Ratio(String words, String... quantiles) {
            this.words = words;
            this.share5 = quantiles[0];
            this.median = quantiles[1];
            this.share95 = quantiles[2];
            this.share99 = quantiles[3];
            this.largest = quantiles[4];
        }

        /** The row as it stands in the theory page. */
        List<String> quantiles() {
            return List.of(share5, median, share95, share99, largest);
        }
    }
}
