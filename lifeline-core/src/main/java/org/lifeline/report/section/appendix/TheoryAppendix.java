package org.lifeline.report.section.appendix;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;

/**
 * The theory that the calculation line by line cites, in so many words that a reviewer can check its formulas without
 * anything else: "theory 3" in a source is paragraph 3 here. It says the same as the theory pages of the library.
 */
public final class TheoryAppendix {
    /**
     * A paragraph of the theory.
     *
     * @param title number and title
     * @param text what holds
     * @param formulas its formulas, each with its reason
     */
    private record Part(String title, String text, List<String> formulas) {}

    private static final List<Part> LINE = List.of(
            new Part(
                    "1 A piece of cable",
                    "Between two places where force enters, only the weight w per unstretched length acts on the cable. s counts"
                            + " unstretched length, up to S at the end of the piece; H is the horizontal component of the tension, V its"
                            + " vertical component at the start, up positive, V′ at the end; T and T′ are the tensions there. The cable"
                            + " is perfectly flexible, so its tangent has the direction of the tension vector t:",
                    List.of(
                            "equilibrium of ds: dt/ds = w upward, so H is constant and the vertical component is V + w s;",
                            "geometry: dr/ds = (1 + ε(T)) t/T with T(s) = √(H² + (V + w s)²), the elastic catenary (Irvine,"
                                    + " Cable Structures, MIT Press 1981, ch. 1). Nothing is linearised.")),
            new Part(
                    "2 The piece in closed form",
                    "With a strain ε = a + b T (for a constant stiffness a = 0, b = 1/EA) the integrals of run X and rise Z are"
                            + " elementary:",
                    List.of(
                            "A = ∫ds/T = (2/w) artanh q with q = w S/(T + T′); A = S/T where w = 0. Reason: ∫ds/T ="
                                    + " [asinh(V′/H) − asinh(V/H)]/w = ln((V′ + T′)/(V + T))/w, and T′² − T² = V′² − V²;",
                            "X = H ((1 + a) A + b S);",
                            "Z = S (V + V′) ((1 + a)/(T + T′) + b/2), since ∫(V + w s) ds/T = (T′ − T)/w = (V + V′) S/(T + T′).")),
            new Part(
                    "3 Energies of a piece",
                    "C is the complementary energy of the piece, z₁ the elevation of its start, E its strain energy and the potential"
                            + " energy of its weight above elevation 0 together:",
                    List.of(
                            "I = ∫T ds = ½ [S (T′(T + T′) + V (V + V′))/(T + T′) + H² A],"
                                    + " J = ∫T² ds = S (H² + (V² + V V′ + V′²)/3);",
                            "C = ∫(T + ∫ε dT) ds = (1 + a) I + ½ b J; strain energy U = ½ b J;",
                            "E = z₁ w S + V′ Z + H X − C: integrate w ∫(z − z₁) ds by parts with dV = w ds and"
                                    + " H dX + V dz = T (1 + ε) ds.")),
            new Part(
                    "4 The whole line",
                    "Unknowns are, span by span, the tension vector at the first support, where each free-running load stands on the"
                            + " cable, the cable that has passed each intermediate support, and the extension of in-line absorbers."
                            + " Equilibrium of every piece then holds by construction. As many equations are solved by Newton's method:",
                    List.of(
                            "compatibility: the pieces and the in-line absorber, e t/T, reach from support to support; an elastic"
                                    + " support is displaced by u = (R − Rᵢ)/k along each axis, R the force of the line on it, Rᵢ as installed;",
                            "a free-running load: equal tension on both sides, or it rests against the support or load that stops it;",
                            "passage: free, T′ = T; clamped, no cable passes; friction, no cable passes while"
                                    + " e^(−μθ) ≤ T₂/T₁ ≤ e^(μθ), and T₂/T₁ = e^(±μθ) while it slips (Euler 1769, Eytelwein 1808), θ the angle"
                                    + " between the tension vectors in space;",
                            "temperature t: unstretched lengths grow by λ = 1 + α (t − tᵢ), weights per length fall by 1/λ.")),
            new Part(
                    "5 The installed state",
                    "While it is tensioned the cable runs freely over the intermediate supports. Then T + ∫ε dT − w z is the same along"
                            + " the whole cable, so that one number (pretension, sag of a span, total length) fixes the tension everywhere."
                            + " The sag lies where the cable runs parallel to the chord, at s = (H · slope − V)/w.",
                    List.of()),
            new Part(
                    "6 The path of a load, and the heat of friction",
                    "The load grows from nothing to P. Where no support has friction and no absorber yields, the way does not matter."
                            + " Else it is followed in steps that end where a support begins to slip or an absorber to yield, each so short"
                            + " that the work counted by energies and by ∫P dδ agree.",
                    List.of("Q = Σ ∫ΔΨ dq over the supports with friction, Ψ = T + ∫ε dT: a unit of unstretched cable that passes"
                            + " brings Ψ of the side it leaves and takes Ψ of the side it joins; the difference is heat. The tables \"where"
                            + " numbers come from\" sum it in ten steps.")));

    private static final List<Part> ARREST = List.of(
            new Part(
                    "7 The arrest by energy balance",
                    "Workers of mass M fall freely by h until their connecting subsystems are taut. These extend by x under F(x), the"
                            + " attachment descends by δ under P = ΣF. At the lowest point nobody moves:",
                    List.of(
                            "M g (h + δ + x) = W + ∫F dx, W = ∫P dδ along the static path = growth of E of all pieces + lift of those"
                                    + " who hang + Q + ∫F de of in-line absorbers + ½ (R² − Rᵢ²)/k of elastic supports;",
                            "the left side less the right falls with P, by (M g − P)(dδ/dP + dx/dP) < 0 above P = M g: there is one"
                                    + " solution. Where F is a plateau, P and δ stand still and"
                                    + " x = x₀ + [M g (h + δ + x₀) − W − ∫F dx up to x₀]/(P − M g);",
                            "free fall h = max(0, ℓ − (z of the line − z of the harness)), ℓ the taut length;",
                            "an attachment that can run is computed running and held; each quantity takes the worse. Forces are"
                                    + " computed with the maximum, distances with the clearance deployment force.")),
            new Part(
                    "8 The arrest in time",
                    "The cable is a chain of segments of unstretched length L, their mass in the nodes, tension only:"
                            + " T = max(0, EA (ε + τ dε/dt)), τ the damping time (0.2 ms where none is stated; no source). Workers are masses on"
                            + " connecting subsystems that do not give back what tore. Steps are those of the leapfrog method, at 0.9 of its"
                            + " stability limit; cable passes supports and attachments as in paragraph 4, with its momentum. The account of"
                            + " all energies is kept beside it; its drift is stated.",
                    List.of(
                            "Allowance: what ever finer meshes may add to a peak, taken as the largest of 2.5 times the change of the"
                                    + " mesh before, 4 times the last change where that is larger, 2 n^(−2/3) of the peak (½ n^(−2/3) filtered),"
                                    + " n the segments in the shortest span with a fall, and 1.5 times what a low-pass filter of 100 Hz takes off"
                                    + " the peak. The factors are measured on 60 random lines beside meshes of 14 to 28 mm, where at most 0.74 of"
                                    + " the allowance was used.")));

    private TheoryAppendix() {}

    /**
     * Writes the appendix.
     *
     * @return its sections, the first one a main section
     */
    public static List<ReportSection> sections() {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new ReportBlock.Paragraph("Sources \"theory 1\" to \"theory 6\" of the calculation line by line are the"
                + " paragraphs of this appendix. z points up; positions of supports are as installed."));
        LINE.forEach(p -> add(p, blocks));
        ARREST.forEach(p -> add(p, blocks));
        return List.of(new ReportSection("Appendix: theory", 1, blocks), MethodsCompared.section());
    }

    private static void add(Part p, List<ReportBlock> blocks) {
        blocks.add(new ReportBlock.Paragraph(p.title() + ". " + p.text()));
        if (!p.formulas().isEmpty()) {
            blocks.add(new ReportBlock.Items(p.formulas()));
        }
    }
}
