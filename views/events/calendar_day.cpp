#include "views/events/calendar_day.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/scroll_column.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QLocale dayLocale()
{
    return QLocale(QStringLiteral("en_US"));
}

} // namespace

CalendarDay::CalendarDay(bool readOnly, QWidget *parent)
    : QWidget(parent), m_heading(new TextLabel(QString(), TextStyle::Heading, Role::Ink, this)),
      m_add(new QPushButton(icon(QStringLiteral("add")), tr("Add event"), this)), m_column(nullptr)
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->setSpacing(look.space(3));
    m_heading->setWordWrap(true);
    outer->addWidget(m_heading);
    m_column = addScrollColumn(outer, this, look.space(4));
    m_add->setEnabled(!readOnly);
    connect(m_add, &QPushButton::clicked, this, [this] { Q_EMIT addAsked(m_day); });
    outer->addWidget(m_add, 0, Qt::AlignLeft);
}

void CalendarDay::setDay(QDate day, QDate today, const QVector<CalendarItem> &items)
{
    m_day = day;
    const QString name = dayLocale().toString(day, QStringLiteral("dddd d MMMM"));
    m_heading->setText(day == today ? tr("Today, %1").arg(name) : name);
    m_add->setAccessibleName(tr("Add an event on %1").arg(name));
    clearLayout(m_column);
    m_said = {m_heading->text()};
    const QVector<int> on = itemsOn(items, day);
    if (on.isEmpty()) {
        auto *none = new TextLabel(day < today ? tr("Nothing was planned.")
                                               : tr("Nothing planned. The crew and the pits are "
                                                    "free."),
                                   TextStyle::Body, Role::InkMuted, this);
        none->setWordWrap(true);
        m_column->addWidget(none);
        m_said << none->text();
    }
    for (const int i : on)
        addItem(items.at(i));
    m_column->addStretch(1);
}

void CalendarDay::addItem(const CalendarItem &item)
{
    const Theme &look = theme(this);
    auto *block = new QWidget(this);
    auto *column = new QVBoxLayout(block);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.px(3));
    const QStringList lines = item.item.detail.split(QLatin1Char('\n'));
    const auto add = [&](const QString &text, TextStyle style, Role role) {
        auto *label = new TextLabel(text, style, role, block);
        label->setWordWrap(true);
        column->addWidget(label);
        m_said << text;
    };
    auto *head = new QHBoxLayout;
    head->setSpacing(look.space(2));
    auto *name = new TextLabel(lines.first(), TextStyle::BodyStrong, Role::Ink, block);
    name->setWordWrap(true);
    head->addWidget(name, 1);
    m_said << lines.first();
    if (item.item.link.id != 0) {
        auto *open = new QPushButton(tr("Open"), block);
        open->setProperty("role", "quiet");
        open->setAccessibleName(tr("Open %1").arg(lines.first()));
        connect(open, &QPushButton::clicked, this,
                [this, link = item.item.link] { Q_EMIT opened(link); });
        head->addWidget(open, 0, Qt::AlignTop);
    }
    column->addLayout(head);
    QStringList quiet = lines.mid(1);
    for (const Clash &clash : item.clashes)
        quiet.removeAll(clash.what);
    if (!quiet.isEmpty())
        add(quiet.join(QLatin1Char('\n')), TextStyle::Body, Role::InkMuted);
    for (const Clash &clash : item.clashes) {
        column->addWidget(new StatusPill(Role::Act, clashWord(clash.kind), block), 0,
                          Qt::AlignLeft);
        add(clash.what, TextStyle::Body, Role::Ink);
        add(clash.help, TextStyle::Caption, Role::InkMuted);
    }
    m_column->addWidget(block);
}

QString CalendarDay::plainText() const
{
    return m_said.join(QLatin1Char('\n'));
}

} // namespace rickyard::views
