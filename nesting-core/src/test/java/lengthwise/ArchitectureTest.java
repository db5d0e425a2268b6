package lengthwise;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Arrays;
import java.util.Random;

/** The package picture of DEVELOPERS.md, held: who may know whom, and who may use which library. */
@AnalyzeClasses(packages = "lengthwise", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    @ArchTest
    static final ArchRule GEOMETRY_KNOWS_NOBODY = knowsOnly("geometry");

    @ArchTest
    static final ArchRule MODEL_KNOWS_GEOMETRY = knowsOnly("model", "geometry");

    @ArchTest
    static final ArchRule RULES_KNOW_THE_MODEL = knowsOnly("rules", "model", "geometry");

    @ArchTest
    static final ArchRule THE_CHECK_KNOWS_NEITHER_RULES_NOR_SEARCH = knowsOnly("check", "model", "geometry");

    @ArchTest
    static final ArchRule THE_SEARCH_KNOWS_THE_RULES = knowsOnly("solver", "rules", "model", "geometry", "ortools");

    @ArchTest
    static final ArchRule THE_PLAN_KNOWS_THE_MODEL = knowsOnly("plan", "model", "geometry", "ortools");

    @ArchTest
    static final ArchRule THE_WORKSHOP_KNOWS_THE_PLAN = knowsOnly("workshop", "plan", "model", "geometry");

    @ArchTest
    static final ArchRule JTS_IN_GEOMETRY_ONLY = usedOnlyIn("org.locationtech.jts..", "lengthwise.geometry..");

    @ArchTest
    static final ArchRule OR_TOOLS_IN_FOUR_PLACES = usedOnlyIn(
            "com.google.ortools..",
            "lengthwise.ortools..",
            "lengthwise.plan..",
            "lengthwise.solver.compaction..",
            "lengthwise.solver.exact..");

    @ArchTest
    static final ArchRule CHANCE_COMES_IN_BY_A_SEED = noClasses()
            .should()
            .dependOnClassesThat()
            .areAssignableTo(Random.class)
            .orShould()
            .callMethod(Math.class, "random")
            .orShould()
            .callMethod(StrictMath.class, "random");

    @ArchTest
    static final ArchRule TIME_COMES_IN_BY_A_CLOCK = noClasses()
            .should()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(java.time.Instant.class, "now");

    @ArchTest
    static final ArchRule NO_SCREEN =
            noClasses().should().dependOnClassesThat().resideInAnyPackage("java.awt..", "javax.swing..");

    private static ArchRule knowsOnly(String name, String... others) {
        String[] known =
                Arrays.stream(others).map(other -> "lengthwise." + other + "..").toArray(String[]::new);
        return noClasses()
                .that()
                .resideInAPackage("lengthwise." + name + "..")
                .should()
                .dependOnClassesThat(resideInAPackage("lengthwise..")
                        .and(not(resideInAPackage("lengthwise." + name + "..")))
                        .and(not(resideInAnyPackage(known))))
                .allowEmptyShould(false);
    }

    private static ArchRule usedOnlyIn(String library, String... homes) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(homes)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library);
    }
}
