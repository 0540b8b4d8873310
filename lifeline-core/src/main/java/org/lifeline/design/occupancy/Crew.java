package org.lifeline.design.occupancy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.lifeline.model.Worker;

/** Selections of a crew that differ: workers with the same data but their names count as one. */
final class Crew {
    private final List<Worker> heaviestFirst;

    Crew(List<Worker> workers) {
        List<Worker> sorted = new ArrayList<>(workers);
        sorted.sort(Comparator.comparingDouble(Worker::mass).reversed());
        heaviestFirst = List.copyOf(sorted);
    }

    int size() {
        return heaviestFirst.size();
    }

    /** The different selections of a size, the heaviest first. */
    List<List<Worker>> selections(int size) {
        Map<List<Worker>, List<Worker>> list = new LinkedHashMap<>();
        select(size, 0, new ArrayList<>(), list);
        return List.copyOf(list.values());
    }

    private void select(int size, int from, List<Worker> chosen, Map<List<Worker>, List<Worker>> list) {
        if (chosen.size() == size) {
            list.putIfAbsent(chosen.stream().map(Crew::nameless).toList(), List.copyOf(chosen));
            return;
        }
        for (int i = from; i <= heaviestFirst.size() - (size - chosen.size()); i++) {
            chosen.add(heaviestFirst.get(i));
            select(size, i + 1, chosen, list);
            chosen.remove(chosen.size() - 1);
        }
    }

    /** Those of a selection who differ, each once. */
    static List<Worker> different(List<Worker> selection) {
        Map<Worker, Worker> list = new LinkedHashMap<>();
        selection.forEach(w -> list.putIfAbsent(nameless(w), w));
        return List.copyOf(list.values());
    }

    private static Worker nameless(Worker w) {
        return w.toBuilder("-").build();
    }
}
