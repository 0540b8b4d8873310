package org.lifeline.reference;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.lifeline.model.cable.RopeClass;

/** Brings the reference data and the computations together. */
final class ReferenceCases {
    /** The inputs of a case in SI. */
    static final class Inputs {
        private final String name;
        private final Map<String, Double> values = new HashMap<>();

        Inputs(String name) {
            this.name = name;
        }

        double get(String key) {
            Double value = values.get(key);
            if (value == null) {
                throw new IllegalStateException(name + " lacks " + key);
            }
            return value;
        }

        boolean has(String key) {
            return values.containsKey(key);
        }
    }

    private ReferenceCases() {}

    private static Map<String, Function<Inputs, Map<String, Double>>> computations() {
        Map<String, Function<Inputs, Map<String, Double>>> map = new HashMap<>(StaticsCases.all());
        map.putAll(EnergyCases.all());
        map.putAll(DynamicsCases.all());
        return map;
    }

    /** Computed once: simulations take seconds. */
    private static final class Computed {
        static final List<ReferenceCheck> CHECKS = List.copyOf(compute());
    }

    /** Every published number beside the computed one. */
    static List<ReferenceCheck> checks() {
        return Computed.CHECKS;
    }

    private static List<ReferenceCheck> compute() {
        Map<String, Inputs> inputs = new LinkedHashMap<>();
        for (Map<String, String> row : Csv.rows("inputs.csv")) {
            double value = Double.parseDouble(row.get("value")) * ReferenceUnits.factor(row.get("unit"));
            inputs.computeIfAbsent(row.get("case"), Inputs::new).values.put(row.get("name"), value);
        }
        Map<String, Map<String, Double>> computed = new HashMap<>();
        inputs.forEach((name, in) -> computed.put(name, computations().get(name).apply(in)));
        Map<String, Map<String, String>> cases = new HashMap<>();
        Csv.rows("cases.csv").forEach(row -> cases.put(row.get("case"), row));
        List<ReferenceCheck> list = new ArrayList<>();
        for (Map<String, String> row : Csv.rows("expected.csv")) {
            Double value = computed.get(row.get("case")).get(row.get("quantity"));
            if (value == null) {
                throw new IllegalStateException("nothing computed for " + row);
            }
            Map<String, String> head = cases.get(row.get("case"));
            list.add(new ReferenceCheck(
                    source(head),
                    head.get("title"),
                    row.get("quantity"),
                    row.get("unit"),
                    row.get("mark"),
                    row.get("value"),
                    value / ReferenceUnits.factor(row.get("unit")),
                    Double.parseDouble(row.get("relative tolerance")),
                    row.get("reason of the tolerance")));
        }
        list.addAll(ropeFactors());
        list.addAll(ropeRows());
        return list;
    }

    private static RopeClass ropeClass(String designation) {
        for (RopeClass each : RopeClass.values()) {
            if (each.designation().equals(designation)) {
                return each;
            }
        }
        throw new IllegalStateException("no rope class " + designation);
    }

    /** Author or body, work, year and place in one line; a case that lacks one of them is refused, closed forms aside. */
    static String source(Map<String, String> row) {
        String author = row.get("author");
        if (author.equals("closed form")) {
            return author + ", " + named(row, "work");
        }
        return named(row, "author") + ", " + named(row, "work") + ", " + named(row, "year") + ", "
                + named(row, "place");
    }

    private static String named(Map<String, String> row, String column) {
        String value = row.get(column);
        if (value == null || value.isBlank()) {
            throw new IllegalStateException("case " + row.get("case") + " names no " + column + " of its source");
        }
        return value;
    }

    private static List<ReferenceCheck> ropeFactors() {
        List<ReferenceCheck> list = new ArrayList<>();
        double d = 0.010;
        for (Map<String, String> row : Csv.rows("rope-classes.csv")) {
            RopeClass rope = ropeClass(row.get("class"));
            Map<String, Double> factors = new LinkedHashMap<>();
            factors.put("mass factor W", rope.massPerLength(d));
            factors.put("area factor C", rope.metallicArea(d) / (d * d));
            factors.put("strength factor K", rope.minimumBreakingForce(d, 1770e6) / (d * d * 1770e6));
            factors.forEach((name, value) -> list.add(new ReferenceCheck(
                    "K. Feyrer, Wire Ropes, year not noted, Table 1.9 (EN 12385-4 factors)",
                    "Rope class " + row.get("class"),
                    name,
                    "-",
                    "published",
                    row.get(name),
                    value,
                    1e-12,
                    "the factor itself")));
        }
        return list;
    }

    private static List<ReferenceCheck> ropeRows() {
        List<ReferenceCheck> list = new ArrayList<>();
        for (Map<String, String> row : Csv.rows("rope-rows.csv")) {
            RopeClass rope = ropeClass(row.get("class"));
            double d = Double.parseDouble(row.get("diameter mm")) / 1000;
            double grade = Double.parseDouble(row.get("grade N/mm2"));
            boolean mass = row.get("quantity").equals("mass");
            double value = mass ? rope.massPerLength(d) : rope.minimumBreakingForce(d, grade * 1e6);
            list.add(new ReferenceCheck(
                    "International Organization for Standardization, ISO 10425, year not noted, Annex C",
                    row.get("class") + ", " + row.get("diameter mm") + " mm" + (mass ? "" : ", grade " + (int) grade),
                    mass ? "mass" : "minimum breaking force",
                    row.get("unit"),
                    "published",
                    row.get("value"),
                    value / ReferenceUnits.factor(row.get("unit")),
                    2.3e-3,
                    "three printed digits"));
        }
        return list;
    }
}
