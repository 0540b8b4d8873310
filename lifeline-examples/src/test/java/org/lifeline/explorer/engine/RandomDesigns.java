package org.lifeline.explorer.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** Design files by chance, over what a page lets a user turn. */
public final class RandomDesigns {
    private RandomDesigns() {}

    /**
     * A design file.
     *
     * @param seed what chance begins with
     * @return the file; the same for the same seed
     */
    public static String of(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        int spans = 1 + r.nextInt(3);
        List<String> supports = new ArrayList<>();
        List<Double> runs = new ArrayList<>();
        double x = 0;
        double z = r.nextDouble(4, 12);
        String passage = List.of("\"free\"", "\"clamped\"", "{\"friction\": " + number(r, 0.02, 0.4) + "}")
                .get(r.nextInt(3));
        for (int i = 0; i <= spans; i++) {
            boolean end = i == 0 || i == spans;
            String more = "";
            if (!end) {
                more = ", \"passage\": " + passage;
            } else if (r.nextInt(3) == 0) {
                more = ", \"stiffness\": {\"x\": \"" + number(r, 80, 900) + " kN/m\"}";
            } else if (i == spans && r.nextInt(3) == 0) {
                more = ", \"inlineAbsorber\": {\"curve\": [[\"0 m\", \"8 kN\"], [\"0.8 m\", \"8.5 kN\"]],"
                        + " \"initialStiffness\": \"8 MN/m\", \"stopStiffness\": \"220 kN/m\"}";
            }
            supports.add(text(
                    "{\"id\": \"s%d\", \"type\": \"%s\", \"position\": [\"%.3f m\", \"0 m\", \"%.3f m\"]%s}",
                    i, end ? "end" : "intermediate", x, z + r.nextDouble(-0.2, 0.2), more));
            if (i < spans) {
                runs.add(r.nextDouble(4, 18));
                x += runs.get(i);
            }
        }
        int span = 1 + r.nextInt(spans);
        String installed = r.nextBoolean()
                ? "\"pretension\": \"" + number(r, 0.5, 4) + " kN\""
                : text(
                        "\"initialSag\": \"%.4f m\", \"span\": %d",
                        runs.get(span - 1) * r.nextDouble(0.004, 0.03), span);
        String cable = r.nextInt(3) == 0
                ? "\"ropeClass\": \"7x19\", \"diameter\": \"" + number(r, 8, 14)
                        + " mm\", \"tensileGrade\": \"1770 N/mm²\", \"elasticModulus\": \"" + number(r, 60, 110)
                        + " GPa\""
                : "\"massPerLength\": \"" + number(r, 0.1, 0.8) + " kg/m\", \"axialStiffness\": \"" + number(r, 0.5, 6)
                        + " MN\"";
        return "{\"format\": \"org.lifeline.design/1\", \"title\": \"seed " + seed + "\", \"cable\": {\"name\": \"c\", "
                + cable
                + "}, \"supports\": [" + String.join(", ", supports) + "], \"installed\": {" + installed
                + ", \"temperature\": \"15 °C\"}, \"workers\": [{\"id\": \"A\", \"mass\": \"" + number(r, 70, 130)
                + text(
                        " kg\", \"walkingLevel\": \"%.3f m\", \"attachmentHeight\": \"1.5 m\", \"attachment\": \"%s\",",
                        z - 1.8, r.nextBoolean() ? "gripped" : "free-running")
                + " \"connection\": " + connection(r) + "}], \"falls\": [{\"id\": \"f\", \"span\": " + span
                + text(", \"station\": \"%.4f m\"", runs.get(span - 1) * r.nextDouble(0.1, 0.9))
                + ", \"fallers\": [\"A\"]}]}";
    }

    private static String connection(SplittableRandom r) {
        return switch (r.nextInt(3)) {
            case 0 -> "{\"tautLength\": \"1.8 m\", \"stiffness\": \"" + number(r, 15, 60) + " kN/m\"}";
            case 1 ->
                "{\"retractable\": {\"lockDistance\": \"0.6 m\", \"brakeForce\": {\"clearance\": \"2.6 kN\", \"maximum\":"
                        + " \"900 lbf\"}, \"maximumExtension\": \"1.4 m\", \"initialStiffness\": \"80 kN/m\","
                        + " \"stopStiffness\": \"200 kN/m\"}}";
            default ->
                "{\"tautLength\": \"" + number(r, 1, 2) + " m\", \"absorber\": {\"clearanceForce\": \"3.2 kN\","
                        + " \"maximumForce\": \"6 kN\", \"maximumExtension\": \"" + number(r, 0.6, 1.75)
                        + " m\", \"initialStiffness\": \"100 kN/m\", \"stopStiffness\": \"200 kN/m\"}}";
        };
    }

    private static String number(SplittableRandom r, double low, double high) {
        return text("%.4f", r.nextDouble(low, high));
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
