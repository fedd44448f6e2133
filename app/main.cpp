#include "app/cli/command_line.h"

#include <QCoreApplication>
#include <QTextStream>

#include <cstdio>

int main(int argc, char **argv)
{
    QCoreApplication::setOrganizationName(QStringLiteral("Rickyard"));
    QCoreApplication::setApplicationName(QStringLiteral("Rickyard"));
    QCoreApplication::setApplicationVersion(QStringLiteral(RICKYARD_VERSION));

    // A verb needs no display, so the window's application object is made only without one.
    {
        const QCoreApplication application(argc, argv);
        QTextStream out(stdout);
        QTextStream err(stderr);
        const auto code = rickyard::app::runCommandLine(QCoreApplication::arguments(), out, err);
        if (code)
            return *code;
        // The window opens here.
        err << "This build has no window yet. rickyard help shows what it can answer.\n";
        return 2;
    }
}
