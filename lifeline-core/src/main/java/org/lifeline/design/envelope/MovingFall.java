package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/** A fall that is moved along the line, as a moving load is: who falls, and who hangs where. */
record MovingFall(Fall fall) {

    /** The sequences of a design: those of its falls, each once; without falls, each worker alone. */
    static List<MovingFall> of(LifelineDesign design) {
        List<MovingFall> list = new ArrayList<>();
        for (Fall f : design.falls()) {
            if (list.stream().noneMatch(s -> s.isLike(f))) {
                list.add(new MovingFall(f));
            }
        }
        if (list.isEmpty()) {
            double station = design.line().run(1) / 2;
            for (Worker w : design.workers()) {
                list.add(new MovingFall(Fall.builder(w.id() + " alone")
                        .at(Place.of(1, station))
                        .faller(w)
                        .build()));
            }
        }
        return list;
    }

    /** Tells whether the attachment can run along the cable. */
    boolean canRun() {
        return fall.fallers().get(0).attachment() == Attachment.FREE_RUNNING;
    }

    private boolean isLike(Fall other) {
        return ids(fall.fallers()).equals(ids(other.fallers()))
                && fall.hanging().equals(other.hanging())
                && fall.freeFall().equals(other.freeFall());
    }

    private static List<String> ids(List<Worker> workers) {
        return workers.stream().map(Worker::id).toList();
    }
}
