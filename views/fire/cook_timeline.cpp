#include "views/fire/cook_timeline.h"

#include "views/fire/fire_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

CookTimeline::CookTimeline(QWidget *parent)
    : QWidget(parent), m_work(this), m_view(new TimelineView(this)), m_tools(nullptr),
      m_words(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(1));
    m_view->setAccessibleName(tr("Timeline of this cook"));
    column->addWidget(m_view, 1);
    m_words->setWordWrap(true);
    m_words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    // Two lines always, so that nothing moves under the pointer while it reads.
    m_words->setMinimumHeight(2 * m_words->fontMetrics().lineSpacing());
    column->addWidget(m_words);
    auto *row = new QWidget(this);
    m_tools = new FlowLayout(row);
    m_tools->setSpacingSteps(1, 1);
    connect(tool(tr("−"), tr("Show more time on the timeline"), tr("More time (−)")),
            &QPushButton::clicked, m_view, &TimelineView::zoomOut);
    connect(tool(tr("+"), tr("Show less time on the timeline"), tr("Closer (+)")),
            &QPushButton::clicked, m_view, &TimelineView::zoomIn);
    m_whole =
        tool(tr("Whole cook"), tr("Show the whole cook on the timeline"), tr("All of it (0)"));
    connect(m_whole, &QPushButton::clicked, m_view, &TimelineView::showWhole);
    column->addWidget(row);
    connect(m_view, &TimelineView::readingChanged, this, &CookTimeline::showWords);
    connect(m_view, &TimelineView::stretchChanged, this,
            [this] { m_whole->setEnabled(!m_view->isWhole()); });
    m_whole->setEnabled(false);
    showWords({});
}

// The view loses the focus while it is taken down, and has nobody to tell any more.
CookTimeline::~CookTimeline()
{
    disconnect(m_view, nullptr, this, nullptr);
}

QPushButton *CookTimeline::tool(const QString &text, const QString &name, const QString &tip)
{
    auto *made = new QPushButton(text, this);
    made->setAutoDefault(false);
    made->setAccessibleName(name);
    made->setToolTip(tip);
    m_tools->addWidget(made);
    return made;
}

void CookTimeline::addTool(QWidget *added)
{
    m_tools->addWidget(added);
}

void CookTimeline::setSmall(bool small)
{
    m_view->setMinimumHeight(theme(this).px(small ? 270 : 300));
    m_view->setMaximumHeight(small ? theme(this).px(300) : QWIDGETSIZE_MAX);
}

QStringList CookTimeline::problems() const
{
    return curves() ? curves()->problems : QStringList();
}

void CookTimeline::setCook(const Books &books, RecordId id, Instant now, double atLeast)
{
    m_work.cancel();
    m_summary.clear();
    const auto cook = books.cooks.constFind(id);
    if (cook == books.cooks.constEnd()) {
        m_view->setContent({});
        return;
    }
    TimelineContent content = timelineContent(books, *cook, now);
    content.atLeast = atLeast;
    if (curves() && curves()->cook == id)
        content.curves = curves();
    m_view->setContent(content);
    m_title = cookTitle(books, *cook);
    summarise(m_title);
    m_work.run<CookCurvesPtr>(
        [books, id, now](LatestWork::Watch &) { return readCurves(books, id, now); },
        [this](const CookCurvesPtr &curves) {
            TimelineContent with = m_view->content();
            with.curves = curves;
            m_view->setContent(with);
            summarise(m_title);
            Q_EMIT curvesRead();
        });
}

void CookTimeline::summarise(const QString &title)
{
    const TimelineContent &content = m_view->content();
    m_summary = tr("%1 over %2 with %3 feeds.")
                    .arg(title, FireWords::span(Duration::rounded(content.end)))
                    .arg(content.feeds.size());
    const QStringList probes = content.probes();
    if (!probes.isEmpty())
        m_summary += tr(" Probes: %1.").arg(probes.join(QStringLiteral(", ")));
    m_view->setWhatsThis(m_summary);
    if (!m_view->readingAt())
        showWords({});
}

void CookTimeline::showWords(const QString &reading)
{
    if (!reading.isEmpty()) {
        m_words->setText(reading);
        return;
    }
    m_words->setText(
        tr("Point at it to read it. Drag or ← → to move, + and − or the wheel to zoom, "
           "0 for the whole; Ctrl ← → goes from feed to feed."));
    m_view->setAccessibleDescription(m_summary);
}

} // namespace rickyard::views
