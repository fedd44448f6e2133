#include "views/fire/recent_feeds.h"

#include "views/fire/fire_words.h"
#include "views/records/record_form.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using domain::Feed;
using domain::RecordId;
using domain::TableId;

namespace {

constexpr int kShown = 5;

QToolButton *tool(const QString &iconName, const QString &name, QWidget *parent)
{
    auto *button = new QToolButton(parent);
    button->setIcon(icon(iconName, Role::InkMuted));
    button->setAccessibleName(name);
    button->setToolTip(name);
    button->setProperty("role", "quiet");
    button->setMinimumSize(theme(parent).px(40), theme(parent).px(40));
    return button;
}

} // namespace

RecentFeeds::RecentFeeds(PageContext &context, RecordId cook, QWidget *parent)
    : QWidget(parent), m_context(context), m_cook(cook)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_none = new TextLabel(tr("No feed yet."), TextStyle::Body, Role::InkMuted, this);
    column->addWidget(m_none);
    m_rows = new QVBoxLayout;
    m_rows->setSpacing(0);
    column->addLayout(m_rows);
    m_form = new RecordForm(context, TableId::Feed, this);
    m_form->setFixed(QStringLiteral("cook"), cook);
    m_form->setFields({QStringLiteral("time"), QStringLiteral("lot"), QStringLiteral("pieces"),
                       QStringLiteral("weight")});
    m_form->setMinimumHeight(look.px(300));
    m_form->hide();
    column->addWidget(m_form);
    connect(m_form, &RecordForm::saved, m_form, &QWidget::hide);
    connect(m_form, &RecordForm::cancelled, m_form, &QWidget::hide);
    connect(m_form, &RecordForm::deleteAsked, this, &RecentFeeds::remove);
    refresh();
}

void RecentFeeds::refresh()
{
    while (QLayoutItem *item = m_rows->takeAt(0)) {
        // The row may be the one whose button brought us here.
        item->widget()->hide();
        item->widget()->deleteLater();
        delete item;
    }
    QVector<Feed> feeds;
    for (const Feed &feed : m_context.books().feeds)
        if (feed.cook == m_cook)
            feeds << feed;
    std::stable_sort(feeds.begin(), feeds.end(), [](const Feed &a, const Feed &b) {
        return a.time == b.time ? a.id > b.id : a.time > b.time;
    });
    for (const Feed &feed : feeds.first(std::min<qsizetype>(kShown, feeds.size())))
        m_rows->addWidget(rowOf(feed));
    m_none->setVisible(feeds.isEmpty());
    if (!m_form->isHidden() && !m_context.books().feeds.contains(m_form->id()))
        m_form->hide();
}

QWidget *RecentFeeds::rowOf(const Feed &feed)
{
    const domain::Books &books = m_context.books();
    const FireWords words(books);
    auto *row = new QWidget(this);
    auto *layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(theme(this).space(3));
    const QString when = words.clock(feed.time, m_context.verbs.now());
    QString what = feed.pieces == 1 ? tr("1 split") : tr("%1 splits").arg(feed.pieces);
    if (feed.weight)
        what += QString(QStringLiteral(", ") + words.mass(*feed.weight, 1).text());
    auto *time = new TextLabel(when, TextStyle::Figures, Role::InkMuted, row);
    time->setMinimumWidth(theme(this).px(92));
    auto *amount = new TextLabel(what, TextStyle::BodyStrong, Role::Ink, row);
    auto *lot =
        new TextLabel(books.lots.value(feed.lot).name, TextStyle::Body, Role::InkMuted, row);
    lot->setMinimumWidth(1); // a long name gives way to the buttons
    lot->setToolTip(lot->text().toHtmlEscaped());
    layout->addWidget(time);
    layout->addWidget(amount);
    layout->addWidget(lot, 1);
    QToolButton *change = tool(QStringLiteral("edit"), tr("Change the feed of %1").arg(when), row);
    QToolButton *away =
        tool(QStringLiteral("delete"), tr("Take out the feed of %1").arg(when), row);
    change->setEnabled(!m_context.readOnly());
    away->setEnabled(!m_context.readOnly());
    connect(change, &QToolButton::clicked, this, [this, id = feed.id] { edit(id); });
    connect(away, &QToolButton::clicked, this, [this, id = feed.id] { remove(id); });
    layout->addWidget(change);
    layout->addWidget(away);
    return row;
}

void RecentFeeds::edit(RecordId feed)
{
    m_form->load(feed);
    m_form->show();
    m_form->focusFirst();
}

void RecentFeeds::remove(RecordId feed)
{
    const auto done = m_context.verbs.remove(TableId::Feed, {feed});
    if (!done) {
        Q_EMIT refused(done.message());
        return;
    }
    m_form->hide();
    Q_EMIT removed(tr("The feed is taken out and its wood is back on the stack."));
}

} // namespace rickyard::views
