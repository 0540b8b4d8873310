package org.lifeline.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.variable.DesignVariable;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.document.ProjectData;

/**
 * A design file that was read.
 *
 * <p>Immutable and thread-safe.
 *
 * @param design what the core computes
 * @param project what the calculation belongs to
 * @param criteriaChoice what the design is judged by
 * @param written texts and quantities as they were written, by path, in the order of reading
 * @param hashes what tells this file from another one
 * @since 1.0.0
 */
public record DesignFile(
        LifelineDesign design,
        ProjectData project,
        CriteriaChoice criteriaChoice,
        Map<String, String> written,
        Hashes hashes) {

    /**
     * What is too much for an assessment, which moves the falls along the whole line.
     *
     * @return the violation; empty if the whole line can be searched
     */
    public Optional<Violation> exceededByWholeLine() {
        return DesignSize.exceededByWholeLine(design);
    }

    /**
     * The same with another design, to be written again by {@link DesignWriter#write(DesignFile)}. What was written and the
     * hashes stay those of the file that was read.
     *
     * @param value the design
     * @return the new file
     * @since 1.0.0
     */
    public DesignFile withDesign(LifelineDesign value) {
        return new DesignFile(Violations.required("design", value), project, criteriaChoice, written, hashes);
    }

    /**
     * The same judged by something else, as {@link #withDesign}.
     *
     * @param value criteria, basis and parts that are to be handed over
     * @return the new file
     * @since 1.0.0
     */
    public DesignFile withCriteriaChoice(CriteriaChoice value) {
        return new DesignFile(design, project, Violations.required("criteriaChoice", value), written, hashes);
    }

    /**
     * Tells whether the file has the supports where they stand before anything pulls at them. The design has them where they
     * have yielded to the installed line; who changes that line uses {@link DesignVariable#yielding} or
     * {@link org.lifeline.analysis.Statics#withUnloadedSupports}.
     *
     * @return true for {@code "supportPositions": "unloaded"}
     * @since 1.0.0
     */
    public boolean hasUnloadedPositions() {
        return written("supportPositions").filter("unloaded"::equals).isPresent();
    }

    /**
     * A variable of this file's design: of supports that are stated unloaded it lets every value move them anew.
     *
     * @param variable the variable
     * @return the variable, {@linkplain DesignVariable#yielding yielding} where {@link #hasUnloadedPositions} says so
     * @since 1.0.0
     */
    public DesignVariable following(DesignVariable variable) {
        Violations.required("variable", variable);
        return hasUnloadedPositions() ? variable.yielding() : variable;
    }

    /**
     * What a design is judged by.
     *
     * @param criteria the criteria asked for, in the order of the file
     * @param basis what the verdicts rest on
     * @param handover the parts that are to be handed over
     * @since 1.0.0
     */
    public record CriteriaChoice(List<Criterion> criteria, Basis basis, HandoverRequest handover) {
        /**
         * Copies the list.
         *
         * @param criteria the criteria asked for, in the order of the file
         * @param basis what the verdicts rest on
         * @param handover the parts that are to be handed over
         */
        public CriteriaChoice {
            criteria = List.copyOf(criteria);
        }
    }

    /**
     * Hashes of a design file, in lower-case hexadecimal.
     *
     * @param bytes SHA-256 of the bytes as read
     * @param content SHA-256 of what stands in it, without white space between its parts
     * @since 1.0.0
     */
    public record Hashes(String bytes, String content) {}

    /**
     * Copies the collections.
     *
     * @param design the design
     * @param project what the report says of the project
     * @param criteriaChoice what the design is judged by
     * @param written texts and quantities as they were written, by path, in the order of reading
     * @param hashes what tells this file from another one
     */
    public DesignFile {
        written = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(written));
    }

    /**
     * The criteria asked for.
     *
     * @return the criteria in the order of the file; unmodifiable
     */
    public List<Criterion> criteria() {
        return criteriaChoice.criteria();
    }

    /**
     * What the verdicts rest on.
     *
     * @return the basis
     */
    public Basis basis() {
        return criteriaChoice.basis();
    }

    /**
     * SHA-256 of the bytes as read.
     *
     * @return lower-case hexadecimal
     */
    public String sha256() {
        return hashes.bytes();
    }

    /**
     * A value as it was written.
     *
     * @param path the path in the file, for example {@code workers[0].mass}
     * @return the text, if the file has this value
     */
    public Optional<String> written(String path) {
        return Optional.ofNullable(written.get(path));
    }

    /**
     * The parts that are to be handed over.
     *
     * @return the request; empty where the file asks for none
     */
    public HandoverRequest handover() {
        return criteriaChoice.handover();
    }
}
