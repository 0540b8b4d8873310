package org.lifeline.testing;

import static org.lifeline.base.Units.kN;

import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Worker;

/** The worker with whom a free-running attachment is compared in time. */
public final class FreeRunningWorker {
    private FreeRunningWorker() {}

    /** 100 kg on a lanyard of 1.8 m that deploys at 6 kN. */
    public static Worker lanyardOfSixKilonewtons() {
        return Worker.builder("w")
                .mass(100)
                .walkingLevel(4.5)
                .attachment(Attachment.FREE_RUNNING)
                .connection(Connection.lanyard(
                        1.8,
                        PersonalAbsorber.builder()
                                .clearanceForce(kN(6))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(1e5)
                                .stopStiffness(2e5)
                                .build()))
                .build();
    }
}
