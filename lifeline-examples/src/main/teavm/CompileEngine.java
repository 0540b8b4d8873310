import java.io.File;
import java.util.Arrays;
import org.teavm.backend.javascript.JSModuleType;
import org.teavm.tooling.ConsoleTeaVMToolLog;
import org.teavm.tooling.TeaVMProblemRenderer;
import org.teavm.tooling.TeaVMTargetType;
import org.teavm.tooling.TeaVMTool;
import org.teavm.tooling.TeaVMToolException;
import org.teavm.tooling.TeaVMToolLog;
import org.teavm.vm.TeaVMOptimizationLevel;

/**
 * Compiles the engine of the page "explorer" to a script: {@code java … CompileEngine.java FOLDER}.
 *
 * <p>A program of its own because the compiler puts what it compiles into sets that are ordered by identity hash codes: which
 * function stands first depends on everything that its Java machine has done before. A machine that does nothing else, with
 * {@code -XX:hashCode=2} (every identity hash code is 1), writes the same bytes each time.
 */
final class CompileEngine {
    private CompileEngine() {}

    public static void main(String[] args) throws TeaVMToolException {
        TeaVMTool tool = new TeaVMTool();
        tool.setClassLoader(CompileEngine.class.getClassLoader());
        tool.setClassPath(Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(File::new)
                .toList());
        tool.setMainClass("org.lifeline.explorer.engine.Engine");
        tool.setEntryPointName("main");
        tool.setTargetType(TeaVMTargetType.JAVASCRIPT);
        tool.setJsModuleType(JSModuleType.COMMON_JS);
        tool.setTargetDirectory(new File(args[0]));
        tool.setTargetFileName("engine.js");
        tool.setObfuscated(true);
        tool.setStrict(false);
        tool.setMaxTopLevelNames(80_000);
        tool.setOptimizationLevel(TeaVMOptimizationLevel.ADVANCED);
        tool.generate();
        if (!tool.getProblemProvider().getProblems().isEmpty()) {
            TeaVMToolLog log = new ConsoleTeaVMToolLog(false);
            TeaVMProblemRenderer.describeProblems(
                    tool.getDependencyInfo().getCallGraph(), tool.getProblemProvider(), log);
        }
        if (!tool.getProblemProvider().getSevereProblems().isEmpty()) {
            System.exit(1);
        }
    }
}
