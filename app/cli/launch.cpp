#include "app/cli/launch.h"

#include "app/cli/verb_table.h"

#include <QDir>
#include <QSet>
#include <QStandardPaths>

namespace rickyard::app {

namespace {

// Options of the window system that are followed by a value.
bool takesValueOfWindowSystem(const QString &argument)
{
    static const QSet<QString> names = {
        QStringLiteral("platform"),        QStringLiteral("platformpluginpath"),
        QStringLiteral("platformtheme"),   QStringLiteral("plugin"),
        QStringLiteral("style"),           QStringLiteral("stylesheet"),
        QStringLiteral("qwindowgeometry"), QStringLiteral("qwindowicon"),
        QStringLiteral("qwindowtitle"),    QStringLiteral("session"),
        QStringLiteral("display"),         QStringLiteral("geometry")};
    QString name = argument;
    while (name.startsWith(QLatin1Char('-')))
        name.remove(0, 1);
    return names.contains(name);
}

class Parser
{
public:
    explicit Parser(const QStringList &arguments) : m_rest(arguments.mid(1)) {}

    Launch parse()
    {
        while (!m_rest.isEmpty() && !m_launch.mistake)
            take(m_rest.takeFirst());
        return m_launch;
    }

private:
    void take(const QString &argument);
    void takeOption(const QString &argument);
    std::optional<QString> valueFor(const QString &argument);
    void fail(const QString &what) { m_launch.mistake = what; }

    QStringList m_rest;
    Launch m_launch;
    bool m_onlyOperands = false;
};

// "--yard FILE" or "--yard=FILE".
std::optional<QString> Parser::valueFor(const QString &argument)
{
    const qsizetype equals = argument.indexOf(QLatin1Char('='));
    if (equals > 0)
        return argument.mid(equals + 1);
    if (!m_rest.isEmpty())
        return m_rest.takeFirst();
    fail(QStringLiteral("%1 needs a value.").arg(argument));
    return std::nullopt;
}

void Parser::takeOption(const QString &argument)
{
    const QString name = argument.section(QLatin1Char('='), 0, 0);
    if (name == QLatin1String("--yard")) {
        const auto path = valueFor(argument);
        m_launch.yardPath = path.value_or(QString());
        m_launch.yardGiven = true;
        if (path && path->isEmpty())
            fail(QStringLiteral("--yard needs the name of a file."));
        return;
    }
    if (name == QLatin1String("--demo")) {
        m_launch.demo = true;
        return;
    }
    if (name == QLatin1String("--help") || name == QLatin1String("-h")) {
        // "answers --help" is the same as "help answers".
        if (!m_launch.verb.isEmpty())
            m_launch.operands = {m_launch.verb};
        m_launch.verb = QStringLiteral("help");
        return;
    }
    if (name == QLatin1String("--version")) {
        m_launch.verb = QStringLiteral("version");
        return;
    }
    if (m_launch.verb.isEmpty()) {
        if (takesValueOfWindowSystem(argument) && !m_rest.isEmpty())
            m_rest.removeFirst();
        else if (argument.startsWith(QLatin1String("--")))
            fail(QStringLiteral("There is no option %1.").arg(name));
        return;
    }
    const VerbOption *option = findOption(m_launch.verb, name.mid(2));
    if (option == nullptr || !name.startsWith(QLatin1String("--"))) {
        fail(QStringLiteral("%1 has no option %2.").arg(m_launch.verb, name));
        return;
    }
    const bool takesValue = !option->value.isEmpty();
    if (!takesValue && argument.contains(QLatin1Char('='))) {
        fail(QStringLiteral("%1 takes no value.").arg(name));
        return;
    }
    const auto value = takesValue ? valueFor(argument) : std::optional<QString>(QString());
    if (value)
        m_launch.options.insert(option->name, *value);
}

void Parser::take(const QString &argument)
{
    const bool dash = argument.startsWith(QLatin1Char('-')) && argument.size() > 1;
    if (dash && !m_onlyOperands) {
        if (argument == QLatin1String("--"))
            m_onlyOperands = true;
        else
            takeOption(argument);
        return;
    }
    if (!m_launch.verb.isEmpty()) {
        m_launch.operands << argument;
        return;
    }
    if (findVerb(argument) == nullptr)
        fail(QStringLiteral("There is no verb \"%1\".").arg(argument));
    else
        m_launch.verb = argument;
}

} // namespace

QString dataFolder()
{
    return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
}

Launch parseLaunch(const QStringList &arguments)
{
    Launch launch = Parser(arguments).parse();
    if (!launch.yardGiven)
        launch.yardPath = QDir(dataFolder())
                              .filePath(launch.demo ? QStringLiteral("demo.rickyard")
                                                    : QStringLiteral("yard.rickyard"));
    return launch;
}

} // namespace rickyard::app
