#include "app/cli/command_line.h"

#include "app/cli/verb_table.h"

namespace rickyard::app {

std::optional<int> runCommandLine(const QStringList &arguments, QTextStream &out, QTextStream &err)
{
    const Launch launch = parseLaunch(arguments);
    if (launch.mistake) {
        err << *launch.mistake << "\nrickyard help shows what there is.\n";
        return Usage;
    }
    if (launch.verb.isEmpty())
        return std::nullopt;
    const Verb &verb = *findVerb(launch.verb);
    if (launch.operands.size() < verb.fewest || launch.operands.size() > verb.most) {
        err << "Usage: rickyard [--yard FILE] " << verb.name
            << (verb.operands.isEmpty() ? QString() : QString(QLatin1Char(' ') + verb.operands))
            << "\nrickyard help " << verb.name << " says more.\n";
        return Usage;
    }
    // A verb that draws runs after the window system is there; see main.cpp.
    if (verb.run == nullptr)
        return std::nullopt;
    CliCall call{launch, out, err};
    const int code = verb.run(call);
    out.flush();
    err.flush();
    return code;
}

} // namespace rickyard::app
