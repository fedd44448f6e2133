#include "tests/architecture/source_text.h"

#include <QRegularExpression>

namespace rickyard::test {

namespace {

// Walks the text once; every handler consumes from `at` and appends to the code what it blanks.
class Splitter
{
public:
    explicit Splitter(const QString &text) : m_text(text) { m_source.lines = text.split(u'\n'); }

    SourceText run()
    {
        while (m_at < m_text.size()) {
            const QStringView rest = QStringView(m_text).sliced(m_at);
            if (rest.startsWith(u"//"))
                blankUntil(QStringLiteral("\n"), 0);
            else if (rest.startsWith(u"/*"))
                blankUntil(QStringLiteral("*/"), 2);
            else if (rest.startsWith(u"R\"") && !inWord())
                rawLiteral();
            else if (rest.startsWith(u'"'))
                literal(u'"', true);
            else if (rest.startsWith(u'\'') && !inWord()) // 1'000 is a number
                literal(u'\'', false);
            else
                keep();
        }
        return m_source;
    }

private:
    bool inWord() const { return m_at > 0 && m_text.at(m_at - 1).isLetterOrNumber(); }

    void keep()
    {
        const QChar c = m_text.at(m_at++);
        m_line += c == u'\n' ? 1 : 0;
        m_source.code += c;
    }

    void blank()
    {
        const QChar c = m_text.at(m_at++);
        m_line += c == u'\n' ? 1 : 0;
        m_source.code += c == u'\n' ? c : QChar(u' ');
    }

    void blankTo(qsizetype end)
    {
        while (m_at < qMin(end, m_text.size()))
            blank();
    }

    void blankUntil(const QString &mark, qsizetype length)
    {
        const qsizetype found = m_text.indexOf(mark, m_at + length);
        blankTo(found < 0 ? m_text.size() : found + length);
    }

    void rawLiteral()
    {
        const qsizetype open = m_text.indexOf(u'(', m_at);
        if (open < 0)
            return keep();
        const QString close = QStringLiteral(")%1\"").arg(m_text.mid(m_at + 2, open - m_at - 2));
        const qsizetype end = m_text.indexOf(close, open);
        m_source.literals.append({m_line, m_text.mid(open + 1, end - open - 1)});
        blankTo(end < 0 ? m_text.size() : end + close.size());
    }

    void literal(QChar quote, bool recorded)
    {
        qsizetype end = m_at + 1;
        while (end < m_text.size() && m_text.at(end) != quote && m_text.at(end) != u'\n')
            end += m_text.at(end) == u'\\' ? 2 : 1;
        if (recorded)
            m_source.literals.append({m_line, m_text.mid(m_at + 1, end - m_at - 1)});
        keep();
        blankTo(end);
        if (m_at < m_text.size())
            keep();
    }

    QString m_text;
    SourceText m_source;
    qsizetype m_at = 0;
    int m_line = 1;
};

} // namespace

SourceText splitSource(const QString &text)
{
    return Splitter(text).run();
}

QVector<Include> includesOf(const SourceText &source)
{
    static const QRegularExpression directive(QStringLiteral(R"(^\s*#\s*include\b)"));
    static const QRegularExpression form(
        QStringLiteral(R"re(#\s*include\s*(?:<([^>]+)>|"([^"]+)"))re"));
    QVector<Include> includes;
    const QStringList code = source.code.split(u'\n');
    for (int i = 0; i < code.size(); ++i) {
        // The code line has no comments; the line as written still has the quoted name.
        if (!directive.match(code.at(i)).hasMatch())
            continue;
        const auto match = form.match(source.lines.at(i));
        if (match.hasMatch())
            includes.append(
                {i + 1, match.captured(1) + match.captured(2), !match.captured(1).isEmpty()});
    }
    return includes;
}

} // namespace rickyard::test
