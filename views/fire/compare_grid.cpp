#include "views/fire/compare_grid.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/text_label.h"

#include <QGridLayout>

namespace rickyard::views {

namespace {

TextLabel *cellLabel(const QString &text, TextStyle style, Role role, QWidget *parent)
{
    auto *label = new TextLabel(text, style, role, parent);
    label->setWordWrap(true);
    label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    return label;
}

} // namespace

CompareGrid::CompareGrid(QWidget *parent) : QWidget(parent), m_grid(new QGridLayout(this))
{
    const Theme &look = theme(this);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(look.space(4));
    m_grid->setVerticalSpacing(look.space(2));
    for (int column = 0; column < 4; ++column)
        m_grid->setColumnStretch(column, column == 0 ? 3 : 4);
}

void CompareGrid::showRows(const QString &first, const QString &second,
                           const QVector<CompareRow> &rows)
{
    clearLayout(m_grid);
    m_grid->addWidget(cellLabel(first, TextStyle::BodyStrong, Role::Ink, this), 0, 1);
    m_grid->addWidget(cellLabel(second, TextStyle::BodyStrong, Role::Ink, this), 0, 2);
    m_grid->addWidget(
        cellLabel(tr("The second against the first"), TextStyle::Label, Role::InkMuted, this), 0,
        3);
    int at = 1;
    for (const CompareRow &row : rows)
        addRow(at++, row);
}

void CompareGrid::addRow(int at, const CompareRow &row)
{
    if (!row.heading.isEmpty()) {
        auto *head = cellLabel(row.heading, TextStyle::Heading, Role::Ink, this);
        head->setContentsMargins(0, theme(this).space(3), 0, 0);
        m_grid->addWidget(head, at, 0, 1, 4);
        return;
    }
    auto *label = cellLabel(row.label, TextStyle::Label, Role::InkMuted, this);
    // The whole row for a screen reader: a cell alone says nothing.
    label->setAccessibleName(
        QStringLiteral("%1: %2; %3; %4").arg(row.label, row.first, row.second, row.difference));
    m_grid->addWidget(label, at, 0);
    m_grid->addWidget(cellLabel(row.first, TextStyle::Body, Role::Ink, this), at, 1);
    m_grid->addWidget(cellLabel(row.second, TextStyle::Body, Role::Ink, this), at, 2);
    m_grid->addWidget(cellLabel(row.difference,
                                row.differs ? TextStyle::BodyStrong : TextStyle::Body,
                                row.differs ? Role::Ink : Role::InkMuted, this),
                      at, 3);
}

} // namespace rickyard::views
