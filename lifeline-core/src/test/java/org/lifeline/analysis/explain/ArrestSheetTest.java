package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.RescueLoad;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.base.Vector3;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.samples.SampleDesigns;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.Cases;

/** What a sheet of an arrest holds: the sections that the case has, each part of the energy, and the numbers of the result. */
class ArrestSheetTest {
    private static final Map<String, ArrestResult> ARRESTS = solved();

    private static Map<String, ArrestResult> solved() {
        Map<String, ArrestResult> map = new LinkedHashMap<>(SampleDesigns.arrests());
        for (ArrestCase each : List.of(
                Cases.sequence(),
                Cases.touching(),
                Cases.clampsAndCorners(),
                Cases.yielding(),
                Cases.twoInlineAbsorbers(),
                Cases.together(),
                Cases.plain(),
                Cases.climbing())) {
            map.put("case " + each.name(), each.solve());
        }
        map.put("rest", RescueLoad.ofRescuer(90).solve(Objects.requireNonNull(map.get("corner"))));
        map.put("rest in the cold", RescueLoad.ofRescuer(90).solve(Objects.requireNonNull(map.get("gallery"))));
        return map;
    }

    private static List<CalculationStep> sheet(String name) {
        return Objects.requireNonNull(ARRESTS.get(name), name).explain();
    }

    /** The last line of each symbol. */
    private static Map<String, CalculationStep> by(String name) {
        return Reviewer.bySymbol(sheet(name));
    }

    private static double value(Map<String, CalculationStep> by, String symbol) {
        return Objects.requireNonNull(by.get(symbol), symbol).value();
    }

    private static boolean atRest(ArrestResult r) {
        return r.method() == Method.RESCUE_AT_REST;
    }

    private static void spans(List<String> list, ArrestResult r, String when) {
        for (int i = 1; i <= r.line().spans(); i++) {
            list.add("Span " + i + when);
        }
        list.add("Line" + when);
    }

    private static List<String> expectedSections(ArrestResult r) {
        double installed = r.line().installed().temperature();
        boolean asInstalled = r.temperature() == installed && r.fall().hanging().isEmpty();
        List<String> list = new ArrayList<>(List.of("Cable"));
        if (!asInstalled) {
            spans(list, r, ", as installed");
        }
        if (r.temperature() != installed) {
            list.add("Cable at the temperature of the fall");
        }
        spans(list, r, asInstalled ? ", as installed and before the fall" : ", before the fall");
        if (r.line().supports().stream().anyMatch(s -> !s.stiffness().isRigid())) {
            list.add("Supports before the fall");
        }
        list.add("Free fall");
        String when = atRest(r) ? "at rest with a rescuer" : "at the lowest point";
        spans(list, r, ", " + when);
        if (r.fall().place().isAtSupport()) {
            list.add("Descent of the support");
        } else {
            list.add("Descent and sag at the load"
                    + r.attachmentLimit()
                            .map(l -> ", the attachment " + l.label())
                            .orElse(""));
        }
        list.add("Supports " + when);
        if (!atRest(r)) {
            list.add("Energy taken by the line");
            list.add("Energy taken by the connection" + (r.isBound() ? "s" : ""));
            list.add("Balance");
        }
        list.add("Fall distance and clearance");
        return list;
    }

    @Test
    void theSectionsAreThoseOfTheCaseInTheOrderOfTheCalculation() {
        ARRESTS.forEach((name, r) -> {
            List<String> sections = sheet(name).stream()
                    .map(CalculationStep::section)
                    .distinct()
                    .toList();
            assertThat(sections).as(name).containsExactlyElementsOf(expectedSections(r));
        });
    }

    /** Every part of the energy that the line takes stands on the sheet if the case has it, with the result's own number. */
    @Test
    void thePartsOfTheEnergyAreThoseOfTheResult() {
        ARRESTS.forEach((name, r) -> {
            if (atRest(r)) {
                assertThat(by(name)).as(name).doesNotContainKeys("W", "W_1", "W_c", "W_f", "W_r", "P", "G");
                assertThat(value(by(name), "x")).isEqualTo(r.deployment());
                return;
            }
            Map<String, CalculationStep> by = by(name);
            EnergyAccount e = r.energy();
            Map<String, Double> parts = new LinkedHashMap<>();
            parts.put("W_1", e.cable());
            if (!r.fall().hanging().isEmpty()) {
                parts.put("W_2", e.hanging());
            }
            if (e.friction() != 0) {
                parts.put("W_3", e.friction());
            }
            if (!r.inlineAbsorbers().isEmpty()) {
                parts.put("W_4", e.inlineAbsorbers());
            }
            if (r.line().supports().stream().anyMatch(s -> !s.stiffness().isRigid())) {
                parts.put("W_5", e.anchors());
            }
            double sum = 0;
            for (Map.Entry<String, Double> part : parts.entrySet()) {
                assertThat(value(by, part.getKey()))
                        .as("%s, %s", name, part.getKey())
                        .isCloseTo(part.getValue(), within(1e-6 * Math.max(e.fall(), 1)));
                sum += value(by, part.getKey());
            }
            assertThat(value(by, "W")).as(name).isCloseTo(sum, within(1e-9 * Math.max(e.fall(), 1)));
            assertThat(Objects.requireNonNull(by.get("W")).formula())
                    .as(name)
                    .isEqualTo(String.join(" + ", parts.keySet()));
            assertThat(by.containsKey("W_P")).as(name).isEqualTo(!Double.isNaN(r.pathWork()));
            if (by.containsKey("W_P")) {
                assertThat(value(by, "W_P")).as(name).isCloseTo(r.energy().lineWork(), within(1e-4 * e.fall()));
            }
        });
    }

    /** An in-line absorber has taken the area under its curve; it holds the tension of its end. */
    @Test
    void anInLineAbsorberHasTakenTheAreaUnderItsCurve() {
        int found = 0;
        for (Map.Entry<String, ArrestResult> entry : ARRESTS.entrySet()) {
            ArrestResult r = entry.getValue();
            List<Support> supports = r.line().supports();
            for (InlineAbsorberState each : atRest(r) ? List.<InlineAbsorberState>of() : r.inlineAbsorbers()) {
                Map<String, CalculationStep> by = by(entry.getKey());
                boolean first = supports.get(0).id().equals(each.supportId());
                int end = first ? 0 : supports.size() - 1;
                LoadingCurve law =
                        supports.get(end).inlineAbsorber().orElseThrow().curve();
                assertThat(value(by, "e_a" + end)).isEqualTo(each.extension());
                assertThat(value(by, "T_a" + end))
                        .isEqualTo(first ? r.peak().firstTension() : r.peak().lastTension());
                assertThat(value(by, "U_a" + end))
                        .as(entry.getKey())
                        .isCloseTo(
                                law.work(each.extension()),
                                within(1e-6 * r.energy().fall()));
                found++;
            }
        }
        assertThat(found).isGreaterThan(4);
    }

    /** On a plateau of the force the deployment follows from the balance, on a rise from the curve. */
    @Test
    void theDeploymentIsFoundASecondWay() {
        List<String> balanced = new ArrayList<>();
        List<String> read = new ArrayList<>();
        ARRESTS.forEach((name, r) -> {
            CalculationStep again = by(name).get("x_P");
            if (again == null) {
                return;
            }
            assertThat(again.value()).as(name).isCloseTo(r.deployment(), within(2e-6));
            if (again.what().contains("balance")) {
                balanced.add(name);
                assertThat(again.formula()).as(name).contains("G").contains("W");
                double slope = ArrestExplanation.curve(r).slope(r.deployment());
                assertThat(slope).as(name).isZero();
            } else {
                read.add(name);
                double force = ArrestExplanation.curve(r).force(r.deployment());
                assertThat(force).as(name).isCloseTo(r.lineLoad(), within(1e-6 * r.lineLoad()));
            }
        });
        assertThat(balanced).contains("fibre", "self-retracting", "case clamps and corners", "at a post");
        assertThat(read).contains("plain lanyard", "given curve", "bottoms out", "gallery");
    }

    /** Two who are not alike: masses, ways and forces of each, and the largest deployment in the clearance. */
    @Test
    void unequalFallersHaveTheirOwnLines() {
        ArrestResult r = Objects.requireNonNull(ARRESTS.get("case together"));
        assertThat(r.isBound()).isTrue();
        Map<String, CalculationStep> by = by("case together");
        double mass = 0;
        double moment = 0;
        double taken = 0;
        double force = 0;
        double free = 0;
        double g = r.line().gravity();
        for (int i = 0; i < 2; i++) {
            String k = "_" + (i + 1);
            double m = r.fall().fallers().get(i).mass();
            double x = r.deployments().get(i);
            LoadingCurve law = r.fall().fallers().get(i).connection().curve(r.side(), r.temperature());
            assertThat(value(by, "m" + k)).isEqualTo(m);
            assertThat(value(by, "x" + k)).isEqualTo(x);
            assertThat(value(by, "P" + k)).isEqualTo(law.force(x));
            assertThat(value(by, "W_c" + k)).isCloseTo(law.work(x), within(1e-6));
            mass += m;
            moment += m * value(by, "h" + k);
            taken += law.work(x);
            force += law.force(x);
            free += m * g * (value(by, "h" + k) + r.lineDescent() + x);
        }
        assertThat(value(by, "m")).isEqualTo(mass);
        assertThat(value(by, "h")).isCloseTo(moment / mass, within(1e-12));
        assertThat(value(by, "W_c")).isCloseTo(taken, within(1e-5));
        assertThat(value(by, "P")).isCloseTo(force, within(1e-6));
        assertThat(value(by, "W_f")).isCloseTo(free, within(1e-5));
        assertThat(value(by, "h_m")).isEqualTo(r.freeFall());
        double largest = Math.max(r.deployments().get(0), r.deployments().get(1));
        assertThat(value(by, "h_t"))
                .isCloseTo(r.freeFall() + largest + r.lineDescent() + r.harnessStretch(), within(1e-8));
    }

    /** What runs past a support shows its rule: nothing at a clamp, equal tensions over a roller, the capstan with friction. */
    @Test
    void thePassageOfTheCableIsThatOfTheSupport() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = by(name);
            for (int i = 1; i < r.line().spans(); i++) {
                Passage passage = r.line().supports().get(i).passage();
                boolean clamped = passage.kind() == Passage.Kind.CLAMPED;
                boolean free = passage.kind() == Passage.Kind.FREE;
                assertThat(by.containsKey("r_" + i)).as(name).isEqualTo(!clamped);
                assertThat(by.containsKey("μ_" + i)).as(name).isEqualTo(!clamped && !free);
                if (clamped || free) {
                    continue;
                }
                Vector3 a = lastTension(r.peak(), i);
                Vector3 b = firstTension(r.peak(), i + 1);
                double turn = a.angleTo(b);
                assertThat(value(by, "μ_" + i)).isEqualTo(passage.friction());
                assertThat(value(by, "θ_" + i)).as(name).isCloseTo(turn, within(1e-7));
                assertThat(Math.abs(value(by, "u_" + i))).as(name).isLessThanOrEqualTo(1 + 1e-7);
                double plan = (a.x() * b.x() + a.y() * b.y()) / (a.horizontal() * b.horizontal());
                assertThat(by.containsKey("c_" + i)).as(name).isEqualTo(plan < 1 - 1e-9);
                if (by.containsKey("c_" + i)) {
                    assertThat(value(by, "c_" + i)).isCloseTo(plan, within(1e-12));
                }
            }
        });
    }

    private static Vector3 lastTension(LineEquilibrium state, int span) {
        int last = state.span(span).pieces().size() - 1;
        return state.span(span).pieces().get(last).endTension();
    }

    private static Vector3 firstTension(LineEquilibrium state, int span) {
        return state.span(span).pieces().get(0).startTension();
    }

    /** Forces by components, and how far what is elastic has gone; a spring of each direction that yields, and no other. */
    @Test
    void supportsAreThoseOfTheResult() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = by(name);
            boolean plane = r.line().supports().stream()
                    .allMatch(s -> s.position().y() == 0 && s.stiffness().isRigid());
            for (int i = 0; i < r.line().supports().size(); i++) {
                Vector3 f = r.supports().get(i).vector();
                Vector3 u = r.supports().get(i).displacement();
                double tolerance = 1e-6 * r.maximumTension();
                assertThat(value(by, "Rx_" + i)).as(name).isCloseTo(f.x(), within(tolerance));
                assertThat(value(by, "Rz_" + i)).as(name).isCloseTo(f.z(), within(tolerance));
                if (by.containsKey("Ry_" + i)) {
                    assertThat(value(by, "Ry_" + i)).as(name).isCloseTo(f.y(), within(tolerance));
                } else {
                    assertThat(f.y()).as(name).isCloseTo(0, within(tolerance));
                }
                assertThat(plane && by.containsKey("Ry_" + i)).as(name).isFalse();
                Support s = r.line().supports().get(i);
                spring(by, "x_" + i, s.stiffness().x(), u.x());
                spring(by, "z_" + i, s.stiffness().z(), u.z());
                if (by.containsKey("Ry_" + i)) {
                    spring(by, "y_" + i, s.stiffness().y(), u.y());
                }
            }
        });
    }

    private static void spring(Map<String, CalculationStep> by, String k, double stiffness, double displacement) {
        assertThat(by.containsKey("k" + k)).isEqualTo(Double.isFinite(stiffness));
        if (Double.isFinite(stiffness)) {
            assertThat(value(by, "k" + k)).isEqualTo(stiffness);
            assertThat(value(by, "u" + k)).isEqualTo(displacement);
        }
    }

    /** The attachment before the fall lies on the cable where the result says it lies. */
    @Test
    void theAttachmentBeforeTheFallIsThatOfTheResult() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = by(name);
            if (r.fall().place().isAtSupport()) {
                assertThat(value(by, "z_b")).isEqualTo(r.attachmentBefore().z());
                return;
            }
            String k = "b" + r.span() + "h";
            assertThat(value(by, "z_" + k))
                    .as(name)
                    .isCloseTo(r.attachmentBefore().z(), within(1e-8));
            double start = r.before().span(r.span()).pieces().get(0).start().horizontalDistance(r.attachmentBefore());
            assertThat(value(by, "a_" + k)).as(name).isCloseTo(start, within(1e-8));
        });
    }

    @Test
    void fallersAreThoseOfTheDesign() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = by(name);
            for (int i = 0; i < r.fall().fallers().size(); i++) {
                String k = "_" + (i + 1);
                assertThat(value(by, "m" + k))
                        .as(name)
                        .isEqualTo(r.fall().fallers().get(i).mass());
                boolean said = r.fall().freeFall().isPresent();
                assertThat(by.containsKey("z_w" + k)).as(name).isEqualTo(!said);
                if (said) {
                    assertThat(value(by, "h" + k)).isEqualTo(r.fall().freeFall().getAsDouble());
                }
            }
            assertThat(by.containsKey("m_" + (r.fall().fallers().size() + 1))).isFalse();
            assertThat(by.containsKey("C_m"))
                    .as(name)
                    .isEqualTo(r.clearance().obstruction().isPresent());
            assertThat(by.containsKey("l_0_1")).as(name).isEqualTo(name.equals("self-retracting"));
        });
    }
}
