// Feeds a fire through the verbs until it is killed, and prints the id of each feed only after the
// verb has confirmed it. Arguments: the yard file, and how many feeds at the most.
#include "models/workspace/commands/verbs.h"

#include <QCoreApplication>
#include <QDateTime>

#include <cstdio>

using namespace rickyard;

int main(int argc, char **argv)
{
    const QCoreApplication application(argc, argv);
    const QStringList arguments = QCoreApplication::arguments();
    if (arguments.size() < 3)
        return 2;
    auto yard = workspace::Workspace::open(arguments.at(1), QDateTime::currentDateTimeUtc());
    if (!yard || yard.value()->readOnly()) {
        std::fprintf(stderr, "%s\n", qPrintable(yard ? yard.value()->notice() : yard.message()));
        return 3;
    }
    commands::Verbs verbs(*yard.value());
    const domain::RecordId cook = verbs.books().cooks.firstKey();
    const domain::RecordId lot = verbs.books().lots.firstKey();
    for (int i = 0; i < arguments.at(2).toInt(); ++i) {
        const auto fed = verbs.feed(cook, lot, 1);
        if (!fed) {
            std::fprintf(stderr, "%s\n", qPrintable(fed.message()));
            return 1;
        }
        std::printf("%lld\n", static_cast<long long>(fed.value()));
        std::fflush(stdout);
    }
    return 0;
}
