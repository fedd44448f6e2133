#include "app/cli/command_line.h"
#include "app/window/pictures.h"
#include "app/window/window_run.h"

#include <QApplication>
#include <QTextStream>

#include <cstdio>

namespace {

void nameTheProgram()
{
    QCoreApplication::setOrganizationName(QStringLiteral("Rickyard"));
    QCoreApplication::setApplicationName(QStringLiteral("Rickyard"));
    QCoreApplication::setApplicationVersion(QStringLiteral(RICKYARD_VERSION));
}

} // namespace

int main(int argc, char **argv)
{
    nameTheProgram();
    // A verb needs no display, so the window's application object is made only without one.
    {
        const QCoreApplication application(argc, argv);
        QTextStream out(stdout);
        QTextStream err(stderr);
        const auto code = rickyard::app::runCommandLine(QCoreApplication::arguments(), out, err);
        if (code)
            return *code;
    }
    QApplication application(argc, argv);
    const rickyard::app::Launch launch = rickyard::app::parseLaunch(QCoreApplication::arguments());
    if (launch.verb == QLatin1String("pictures"))
        return rickyard::app::makePictures(application, launch);
    return rickyard::app::runWindow(application, launch);
}
