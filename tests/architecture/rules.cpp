#include "tests/architecture/rules.h"

#include "tests/architecture/source_text.h"

#include <QFileInfo>
#include <QMap>
#include <QRegularExpression>

namespace rickyard::test {

namespace {

using Expression = QRegularExpression;

QString finding(int line, const QString &what)
{
    return QStringLiteral("%1: %2").arg(line).arg(what);
}

// Every line of the text that matches, reported with what it matched.
QStringList matches(const QString &text, const Expression &expression, const QString &why)
{
    QStringList found;
    auto each = expression.globalMatch(text);
    while (each.hasNext()) {
        const auto match = each.next();
        const auto before = QStringView(text).first(match.capturedStart());
        found += finding(int(before.count(u'\n')) + 1,
                         QStringLiteral("%1: %2").arg(match.captured().simplified(), why));
    }
    return found;
}

QStringList literalMatches(const SourceText &source, const Expression &expression,
                           const QString &why)
{
    QStringList found;
    for (const Literal &literal : source.literals) {
        if (expression.match(literal.text).hasMatch())
            found +=
                finding(literal.line, QStringLiteral("\"%1\": %2").arg(literal.text.left(60), why));
    }
    return found;
}

const QMap<QString, QStringList> &mayInclude()
{
    static const QStringList data = {QStringLiteral("storage"), QStringLiteral("domain")};
    static const QStringList verbs =
        QStringList{QStringLiteral("commands"), QStringLiteral("workspace")} + data;
    static const QStringList shown =
        QStringList{QStringLiteral("items"), QStringLiteral("exchange")} + verbs;
    static const QMap<QString, QStringList> map = {
        {QStringLiteral("domain"), {}},
        {QStringLiteral("storage"), {QStringLiteral("domain")}},
        {QStringLiteral("exchange"), {QStringLiteral("domain")}},
        {QStringLiteral("workspace"), data},
        {QStringLiteral("commands"), verbs},
        {QStringLiteral("items"), verbs},
        {QStringLiteral("views"), shown},
        {QStringLiteral("app"), QStringList{QStringLiteral("views")} + shown},
    };
    return map;
}

QStringList layers(const QString &path, const QString &text)
{
    const QString layer = layerOf(path);
    QStringList found;
    for (const Include &include : includesOf(splitSource(text))) {
        const QString other = layerOf(include.header);
        if (other.isEmpty() || other == layer || mayInclude().value(layer).contains(other))
            continue;
        found += finding(include.line,
                         QStringLiteral("%1 must not include %2").arg(layer, include.header));
    }
    return found;
}

QStringList rootRelative(const QString &, const QString &text)
{
    QStringList found;
    for (const Include &include : includesOf(splitSource(text))) {
        if (include.system || include.header.endsWith(QStringLiteral(".moc")))
            continue;
        const QString file = QStringLiteral(RICKYARD_SOURCE_DIR "/%1").arg(include.header);
        if (layerOf(include.header).isEmpty() || !QFileInfo(file).isFile())
            found += finding(include.line,
                             QStringLiteral("no such file from the root: %1").arg(include.header));
    }
    return found;
}

// The domain is values and rules. QCoreApplication is there for its translation context alone.
QStringList pureDomain(const QString &path, const QString &text)
{
    if (layerOf(path) != QStringLiteral("domain"))
        return {};
    static const Expression allowed(QStringLiteral(
        R"(^(?:[a-z_0-9]+|glpk\.h|Eigen/\w+|boost/(?:math|random)/.+|(?:QtCore/)?Q(?:tGlobal|tMath|tEndian|)"
        R"(tAlgorithms|t?NumericLimits|String|StringList|StringView|StringBuilder|Latin1String|)"
        R"(Latin1StringView|AnyStringView|Char|ByteArray|ByteArrayView|Vector|List|Map|MultiMap|)"
        R"(Hash|MultiHash|HashFunctions|Set|Pair|Date|Time|DateTime|TimeZone|Locale|Uuid|Variant|)"
        R"(Flags|SharedDataPointer|RegularExpression|CoreApplication|Json\w+|Debug))$)"));
    static const Expression input(QStringLiteral("^(?:fstream|iostream|cstdio|filesystem|thread|"
                                                 "mutex|future|ctime)$"));
    static const Expression impure(QStringLiteral(
        R"(\b(?:currentDate|currentTime|currentDateTime|currentDateTimeUtc|currentSecsSinceEpoch|)"
        R"(currentMSecsSinceEpoch|systemTimeZoneId|systemTimeZone|random_device|QRandomGenerator|)"
        R"(Q_OBJECT|Q_GADGET|qEnvironmentVariable|getenv)\b|_clock\s*::\s*now\b|\bs?rand\s*\(|)"
        R"(\bQLocale\s*::\s*system\b)"));
    const SourceText source = splitSource(text);
    QStringList found;
    for (const Include &include : includesOf(source)) {
        if (!include.system)
            continue;
        if (!allowed.match(include.header).hasMatch() || input.match(include.header).hasMatch())
            found += finding(include.line,
                             QStringLiteral("the domain must not use <%1>").arg(include.header));
    }
    return found + matches(source.code, impure,
                           QStringLiteral("the domain has no clock, chance, objects or I/O"));
}

QStringList noWidgetsInModels(const QString &path, const QString &text)
{
    static const Expression shown(QStringLiteral(
        R"(^(?:Qt(?:Widgets|Charts|PrintSupport|Svg|SvgWidgets)/.*|Q\w*Widget|Q\w*Dialog|)"
        R"(Q\w*Chart\w*|QApplication|QLabel|QMessageBox|QPrinter|QMainWindow)$)"));
    QStringList found;
    if (!path.startsWith(QStringLiteral("models/")))
        return found;
    for (const Include &include : includesOf(splitSource(text))) {
        if (include.system && shown.match(include.header).hasMatch())
            found += finding(include.line,
                             QStringLiteral("a model must not know <%1>").arg(include.header));
    }
    return found;
}

// A sentence for a person starts with a capital and goes on in small letters, so statements in
// one case throughout are enough to tell the two apart.
QStringList sqlOnlyInStorage(const QString &path, const QString &text)
{
    if (layerOf(path) == QStringLiteral("storage"))
        return {};
    static const Expression statement(QStringLiteral(
        R"(\b(?:SELECT\s|INSERT\s+(?:OR\s+\w+\s+)?INTO\b|REPLACE\s+INTO\b|UPDATE\s+\S+\s+SET\b|)"
        R"(DELETE\s+FROM\b|(?:CREATE|DROP|ALTER)\s+(?:TABLE|INDEX|VIEW|TRIGGER|UNIQUE|TEMP)\b|)"
        R"(PRAGMA\s+\w|VACUUM\b|BEGIN\s+(?:IMMEDIATE|TRANSACTION)\b)|)"
        R"(^\s*(?:select\s.*\sfrom\s|insert\s+into\s|update\s+\w+\s+set\s|delete\s+from\s|)"
        R"((?:create|drop|alter)\s+table\s|pragma\s+\w))"));
    static const Expression classes(QStringLiteral(R"(\bQSql\w+|\bsqlite3_\w+|<QtSql\b)"));
    const SourceText source = splitSource(text);
    const QString why = QStringLiteral("SQL belongs in models/storage");
    return literalMatches(source, statement, why) + matches(source.code, classes, why);
}

QStringList coloursOnlyInTheme(const QString &path, const QString &text)
{
    if (path.startsWith(QStringLiteral("views/theme/")))
        return {};
    static const Expression code(QStringLiteral(
        R"(\bQt::(?:dark)?(?:black|white|red|green|blue|cyan|magenta|yellow|gray|lightGray|Gray|)"
        R"(Red|Green|Blue|Cyan|Magenta|Yellow)\b|\bQColorConstants\b|\bqRgba?\s*\(|)"
        R"(\bQColor(?:\s+\w+)?\s*[({]\s*(?:\d|"|Qt::|QLatin1|QStringLiteral)|)"
        R"(\bQColor::from\w+\s*\(\s*\d)"));
    static const Expression written(QStringLiteral(
        R"(#(?:[0-9a-fA-F]{8}|[0-9a-fA-F]{6}|[0-9a-fA-F]{3})\b|\b(?:rgba?|hsla?|hsva?)\(\s*\d|)"
        R"(color\s*:\s*(?:black|white|red|green|blue|cyan|magenta|yellow|orange|gr[ae]y)\b)"));
    const SourceText source = splitSource(text);
    const QString why = QStringLiteral("a colour has a name, and the name lives in views/theme");
    return matches(source.code, code, why) + literalMatches(source, written, why);
}

// Rich text is for reports, which escape what people typed.
QStringList plainText(const QString &path, const QString &text)
{
    static const Expression rich(QStringLiteral(
        R"(\b(?:setHtml|insertHtml|appendHtml|setMarkdown)\s*\(|\bQt::(?:RichText|MarkdownText)\b)"));
    const QString code = splitSource(text).code;
    const QStringList found =
        matches(code, rich, QStringLiteral("user text is plain text, never parsed"));
    if (!path.startsWith(QStringLiteral("views/reports/")) || found.isEmpty())
        return found;
    return code.contains(QStringLiteral("toHtmlEscaped")) ? QStringList() : found;
}

QStringList noOpenGl(const QString &, const QString &text)
{
    return matches(splitSource(text).code, Expression(QStringLiteral(R"(\bsetUseOpenGL\b)")),
                   QStringLiteral("crashes without a display"));
}

// State that anyone can reach is state that no one owns. Qt's own application object is exempt.
QStringList noGlobals(const QString &, const QString &text)
{
    static const Expression single(QStringLiteral(
        R"(\bstatic\s[^;{}()]*\binstance\s*\(|\b(?!Q\w*Application\b)\w+::instance\s*\()"));
    static const Expression variable(
        QStringLiteral(
            R"(^[ \t]*(?:(?:inline|static|thread_local)[ \t]+)*(?:static|thread_local)[ \t]+)"
            R"((?:inline[ \t]+)?(?![^;={(]*\bconst(?:expr|init|eval)?\b)[^;={(\n]*\w[ \t]*[;={])"),
        Expression::MultilineOption);
    static const Expression atNamespace(
        QStringLiteral(
            R"(^(?!(?:const|constexpr|using|return|namespace|class|struct|enum|union|)"
            R"(template|typedef|friend|static|extern)\b)(?![^;={(]*\bconst(?:expr|init)?\b))"
            R"([A-Za-z_][\w:<>,*& ]*[ *&>]\w+ *(?:=[^=;\n]*|\{[^;\n]*\})?;)"),
        Expression::MultilineOption);
    const QString code = splitSource(text).code;
    return matches(code, single, QStringLiteral("pass the object in instead")) +
           matches(code, variable, QStringLiteral("a mutable global")) +
           matches(code, atNamespace, QStringLiteral("a mutable global"));
}

QStringList shortEnough(const QString &, const QString &text)
{
    constexpr int kMost = 600; // 400 is the aim; beyond this a file has two subjects
    const int lines = int(text.count(u'\n'));
    return lines <= kMost ? QStringList()
                          : QStringList{finding(lines, QStringLiteral("more than %1 lines: split "
                                                                      "it by subject")
                                                           .arg(kMost))};
}

} // namespace

QString layerOf(const QString &path)
{
    static const QVector<QPair<QString, QString>> folders = {
        {QStringLiteral("models/domain/"), QStringLiteral("domain")},
        {QStringLiteral("models/storage/"), QStringLiteral("storage")},
        {QStringLiteral("models/exchange/"), QStringLiteral("exchange")},
        {QStringLiteral("models/workspace/commands/"), QStringLiteral("commands")},
        {QStringLiteral("models/workspace/"), QStringLiteral("workspace")},
        {QStringLiteral("models/items/"), QStringLiteral("items")},
        {QStringLiteral("views/"), QStringLiteral("views")},
        {QStringLiteral("app/"), QStringLiteral("app")},
    };
    for (const auto &[folder, layer] : folders) {
        if (path.startsWith(folder))
            return layer;
    }
    return {};
}

const QVector<Rule> &sourceRules()
{
    static const QVector<Rule> rules = {
        {"layers", layers},
        {"root-relative", rootRelative},
        {"pure domain", pureDomain},
        {"no widgets in models", noWidgetsInModels},
        {"sql only in storage", sqlOnlyInStorage},
        {"colours only in theme", coloursOnlyInTheme},
        {"plain text", plainText},
        {"no OpenGL", noOpenGl},
        {"no globals", noGlobals},
        {"short enough", shortEnough},
    };
    return rules;
}

QStringList machinePaths(const QString &, const QString &text)
{
    static const Expression path(QStringLiteral(R"((?<![\w.*}/-])/(?:work|root)/\w)"));
    return matches(text, path, QStringLiteral("a path of somebody's machine"));
}

QStringList ownPaths(const QString &, const QString &text)
{
    static const Expression own(QStringLiteral(R"(\b__FILE__\b)"));
    return matches(splitSource(text).code, own, QStringLiteral("a path relative to the build"));
}

QStringList strangersAtTheTop(const QStringList &names)
{
    static const QStringList known = {QStringLiteral("CMakeLists.txt"),
                                      QStringLiteral("CMakePresets.json"),
                                      QStringLiteral("README.md"),
                                      QStringLiteral("DEVELOPERS.md"),
                                      QStringLiteral("LICENSE"),
                                      QStringLiteral("app"),
                                      QStringLiteral("models"),
                                      QStringLiteral("views"),
                                      QStringLiteral("resources"),
                                      QStringLiteral("tests"),
                                      QStringLiteral("docs")};
    QStringList found;
    for (const QString &name : names) {
        if (!known.contains(name) && !name.startsWith(u'.') &&
            !name.startsWith(QStringLiteral("build")))
            found += name;
    }
    return found;
}

} // namespace rickyard::test
