#include "tests/support/registry.h"

#include <QTest>
#if defined(QT_WIDGETS_LIB)
#include <QApplication>
using TestApplication = QApplication;
#elif defined(QT_GUI_LIB)
#include <QGuiApplication>
using TestApplication = QGuiApplication;
#else
#include <QCoreApplication>
using TestApplication = QCoreApplication;
#endif
#include <QStandardPaths>

namespace rickyard::test {
std::vector<Factory> &factories()
{
    static std::vector<Factory> all;
    return all;
}
} // namespace rickyard::test

// Runs every registered class, or only the one named first: tst_domain TstUnits [function ...].
int main(int argc, char **argv)
{
    TestApplication application(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("rickyard-tests"));
    QCoreApplication::setApplicationName(QStringLiteral("rickyard-tests"));
    QStandardPaths::setTestModeEnabled(true);
    QStringList arguments = QCoreApplication::arguments();
    // Qt Test's crash handler starts a debugger again and again for a fault that comes again: what
    // crashes shall end, and at once.
    arguments.append(QStringLiteral("-nocrashhandler"));
    QString only;
    if (arguments.size() > 1 && arguments.at(1).startsWith(QLatin1String("Tst")))
        only = arguments.takeAt(1);
    int failed = 0;
    int ran = 0;
    for (const auto &make : rickyard::test::factories()) {
        const auto object = make();
        if (!only.isEmpty() && only != QString::fromLatin1(object->metaObject()->className())
                                           .section(QStringLiteral("::"), -1))
            continue;
        ++ran;
        failed += QTest::qExec(object.get(), arguments) != 0 ? 1 : 0;
    }
    return ran == 0 ? 2 : (failed == 0 ? 0 : 1);
}
