package lengthwise.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Who may know whom above the core: drawings know the model, the command line knows everything, nobody knows it. */
@AnalyzeClasses(packages = "lengthwise", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String[] COMMAND_LINE = {
        "lengthwise.cli..", "lengthwise.job..", "lengthwise.report..", "lengthwise.stash.."
    };
    private static final String[] DRAWINGS = {
        "lengthwise.drawing..",
        "lengthwise.svg..",
        "lengthwise.dxf..",
        "lengthwise.pdf..",
        "lengthwise.hpgl..",
        "lengthwise.toolpath.."
    };

    @ArchTest
    static final ArchRule DRAWINGS_KNOW_THE_MODEL_ALONE = noClasses()
            .that()
            .resideInAnyPackage(DRAWINGS)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "lengthwise",
                    "lengthwise.rules..",
                    "lengthwise.check..",
                    "lengthwise.solver..",
                    "lengthwise.plan..");

    @ArchTest
    static final ArchRule NOBODY_KNOWS_THE_COMMAND_LINE = noClasses()
            .that()
            .resideOutsideOfPackages(COMMAND_LINE)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(COMMAND_LINE);

    @ArchTest
    static final ArchRule THE_CORE_KNOWS_NO_DRAWINGS = noClasses()
            .that()
            .resideOutsideOfPackages(DRAWINGS)
            .and()
            .resideOutsideOfPackages(COMMAND_LINE)
            .and()
            .resideOutsideOfPackage("lengthwise.testing..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(DRAWINGS);

    @ArchTest
    static final ArchRule BATIK_IN_DRAWINGS_ONLY = usedOnlyIn("org.apache.batik..", DRAWINGS);

    @ArchTest
    static final ArchRule PDFBOX_IN_ONE_PLACE = usedOnlyIn("org.apache.pdfbox..", "lengthwise.pdf..");

    @ArchTest
    static final ArchRule PICOCLI_IN_THE_COMMANDS_ONLY = usedOnlyIn("picocli..", "lengthwise.cli..");

    @ArchTest
    static final ArchRule YAML_IN_THE_JOB_ONLY = usedOnlyIn("org.snakeyaml..", "lengthwise.job..");

    @ArchTest
    static final ArchRule DATABASE_IN_THE_STASH_ONLY = usedOnlyIn("java.sql..", "lengthwise.stash..");

    @ArchTest
    static final ArchRule SQLITE_IN_THE_STASH_ONLY = usedOnlyIn("org.sqlite..", "lengthwise.stash..");

    @ArchTest
    static final ArchRule JTS_IN_GEOMETRY_ONLY = usedOnlyIn("org.locationtech.jts..", "lengthwise.geometry..");

    private static ArchRule usedOnlyIn(String library, String... homes) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(homes)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library);
    }
}
