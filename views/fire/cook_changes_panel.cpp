#include "views/fire/cook_changes_panel.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QHeaderView>
#include <QTableView>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::TableId;

CookChangesPanel::CookChangesPanel(PageContext &context, QWidget *parent)
    : QWidget(parent),
      m_model(new items::RecordModel(context.verbs.yard(), TableId::CookChange, this)),
      m_proxy(new items::SearchProxy(this)), m_view(new QTableView(this)),
      m_none(new TextLabel(tr("Nothing was changed since the fire was out."), TextStyle::Body,
                           Role::InkMuted, this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, look.space(2), 0, 0);
    column->setSpacing(look.space(2));
    m_proxy->setSourceModel(m_model);
    m_view->setModel(m_proxy);
    m_view->setAccessibleName(tr("Changed afterwards"));
    m_view->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_view->setSelectionMode(QAbstractItemView::SingleSelection);
    m_view->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_view->setShowGrid(false);
    m_view->setWordWrap(true);
    m_view->setTabKeyNavigation(false);
    m_view->verticalHeader()->hide();
    m_view->verticalHeader()->setMinimumSectionSize(look.rowHeight());
    m_view->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_view->horizontalHeader()->setHighlightSections(false);
    m_view->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_view->setColumnHidden(m_model->columnOfField(QStringLiteral("cook")), true);
    m_view->sortByColumn(m_model->columnOfField(QStringLiteral("time")), Qt::DescendingOrder);
    column->addWidget(m_view, 1);
    column->addWidget(m_none, 0, Qt::AlignTop);
    for (const auto signal : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
        connect(m_model, signal, this, &CookChangesPanel::follow);
    connect(m_model, &QAbstractItemModel::modelReset, this, &CookChangesPanel::follow);
    setCook(0);
}

void CookChangesPanel::setCook(domain::RecordId cook)
{
    m_model->setFilter([cook](const domain::Row &row) {
        return domain::integerOr(domain::valueOf(row, QStringLiteral("cook")), 0) == cook;
    });
    follow();
}

int CookChangesPanel::count() const
{
    return m_model->rowCount();
}

void CookChangesPanel::follow()
{
    m_view->setVisible(count() > 0);
    m_none->setVisible(count() == 0);
    Q_EMIT countChanged(count());
}

} // namespace rickyard::views
