package org.lifeline.design.occupancy;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.InvalidInputException;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/** The falls in one span that can govern for a selection of workers. Not thread-safe. */
final class Arrangements {
    /** Distance between workers who hang in one span [m]: two people side by side (common practice, no source). */
    private static final double APART = 0.6;

    private final Lifeline line;
    private final int span;
    private final List<Fall> falls = new ArrayList<>();

    Arrangements(Lifeline line, int span) {
        this.line = line;
        this.span = span;
    }

    List<Fall> falls() {
        return falls;
    }

    /** All of a selection are in the span. */
    void inOneSpan(List<Worker> selection) {
        int n = selection.size();
        add(n == 1 ? ArrangementKind.ALONE : ArrangementKind.TOGETHER, selection, List.of());
        for (int hanging = 1; hanging < n; hanging++) {
            ArrangementKind kind = hanging == n - 1 ? ArrangementKind.IN_SEQUENCE : ArrangementKind.SOME_TOGETHER;
            for (Worker last : Crew.different(selection)) {
                List<Worker> before = new ArrayList<>(selection);
                before.remove(last);
                List<Worker> fallers = new ArrayList<>(List.of(last));
                while (before.size() > hanging) {
                    fallers.add(before.remove(0));
                }
                add(kind, fallers, places(before, filled(before.size())));
            }
        }
    }

    /** A selection over the line: as many in the span as it takes, and the other way round one alone there. */
    void overTheLine(List<Worker> selection, int[] capacity) {
        int here = Math.min(selection.size(), capacity[span]);
        for (Worker last : Crew.different(selection)) {
            List<Worker> others = new ArrayList<>(selection);
            others.remove(last);
            List<Integer> full = spread(others.size(), capacity, here - 1);
            if (full.size() == others.size()) {
                add(ArrangementKind.FULL_SPAN, List.of(last), places(others, full));
            }
            List<Integer> away = spread(others.size(), capacity, 0);
            if (!others.isEmpty() && away.size() == others.size()) {
                add(ArrangementKind.NEIGHBOURS, List.of(last), places(others, away));
            }
        }
        List<Worker> fallers = selection.subList(0, here);
        List<Worker> others = selection.subList(here, selection.size());
        List<Integer> rest = spread(others.size(), capacity, 0);
        if (here > 1 && rest.size() == others.size()) {
            add(ArrangementKind.FULL_SPAN, fallers, places(others, rest));
        }
    }

    /** Spans for those who hang: some here, the others in the nearest spans, no more in each than it takes. */
    private List<Integer> spread(int number, int[] capacity, int here) {
        List<Integer> list = new ArrayList<>(filled(Math.min(here, number)));
        for (int away = 1; away < capacity.length; away++) {
            for (int s : new int[] {span + away, span - away}) {
                for (int i = 0; s >= 1 && s < capacity.length && i < capacity[s] && list.size() < number; i++) {
                    list.add(s);
                }
            }
        }
        return list;
    }

    private List<Integer> filled(int number) {
        List<Integer> list = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            list.add(span);
        }
        return list;
    }

    private List<Fall.Hanging> places(List<Worker> hanging, List<Integer> spans) {
        List<Fall.Hanging> list = new ArrayList<>();
        int[] count = new int[line.spans() + 1];
        for (int i = 0; i < hanging.size(); i++) {
            int s = spans.get(i);
            int n = count[s]++;
            double run = line.run(s);
            // From the middle outward, to both sides in turn; in a short span closer together.
            double apart = Math.min(APART, run / (2.0 * hanging.size() + 2));
            int steps = (n + 1) / 2;
            double off = steps * apart * (n % 2 == 0 ? 1 : -1);
            list.add(new Fall.Hanging(hanging.get(i), Place.of(s, run / 2 + off)));
        }
        return list;
    }

    private void add(ArrangementKind kind, List<Worker> fallers, List<Fall.Hanging> hanging) {
        String id = (falls.size() + 1) + ": " + kind.words();
        // Off the middle, where those who hang are: the envelope moves the fall along the span.
        Fall.Builder b = Fall.builder(id).at(Place.of(span, 0.3 * line.run(span)));
        fallers.forEach(b::faller);
        hanging.forEach(h -> b.hanging(h.worker(), h.place()));
        try {
            falls.add(b.build());
        } catch (InvalidInputException e) {
            // Workers who are attached in different ways do not fall at one place; they fall one after the other.
            if (fallers.size() < 2) {
                throw e;
            }
        }
    }
}
