#include "views/wood/piece_chips.h"

#include "models/domain/quantities/units.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/wood_words.h"

#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

PieceChips::PieceChips(const QString &label, const QStringList &units, QWidget *parent)
    : QWidget(parent)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    m_field = new UnitLineEdit;
    m_field->setUnits(units);
    m_field->setUnit(units.first());
    m_field->setAccessibleName(label);
    m_field->installEventFilter(this);
    m_row = new FieldRow(label, m_field);
    column->addWidget(m_row);
    m_holder = new QWidget(this);
    m_chips = new FlowLayout(m_holder);
    m_chips->setContentsMargins(0, 0, 0, 0);
    m_chips->setSpacingSteps(1, 1);
    column->addWidget(m_holder);
    m_holder->setVisible(false);
    connect(m_field, &UnitLineEdit::unitChanged, this, [this](const QString &unit) {
        m_field->setUnit(unit);
        m_row->clearProblem();
        showPieces();
        Q_EMIT changed();
    });
    connect(m_field, &QLineEdit::textEdited, this, [this] { m_row->clearProblem(); });
}

void PieceChips::setReader(std::function<std::optional<double>(const QString &)> read)
{
    m_read = std::move(read);
}

void PieceChips::setJudge(std::function<QString(const QString &, std::optional<double>)> judge)
{
    m_judge = std::move(judge);
}

void PieceChips::setMarked(std::function<bool(double)> marked)
{
    m_marked = std::move(marked);
}

bool PieceChips::isEmpty() const
{
    return m_values.isEmpty() && m_field->text().trimmed().isEmpty();
}

QString PieceChips::asTyped() const
{
    QStringList figures;
    for (double value : m_values)
        figures << QString::number(value, 'g', 6);
    return QString(figures.join(QLatin1Char(' ')) + QLatin1Char(' ') + m_field->unit());
}

void PieceChips::clear()
{
    m_values.clear();
    m_field->clear();
    m_row->clearProblem();
    showPieces();
}

bool PieceChips::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_field && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            take();
            return true;
        }
        if (key == Qt::Key_Backspace && m_field->text().isEmpty() && !m_values.isEmpty()) {
            drop(static_cast<int>(m_values.size()) - 1);
            return true;
        }
        if (key == Qt::Key_Escape) {
            Q_EMIT escaped();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

bool PieceChips::settle()
{
    return m_field->text().trimmed().isEmpty() || take();
}

bool PieceChips::take()
{
    const QString text = m_field->text().trimmed();
    // An empty Enter after the last piece is no slip.
    if (text.isEmpty() && !m_values.isEmpty())
        return true;
    const std::optional<double> value = m_read(text);
    const QString refusal = m_judge(text, value);
    m_row->setProblem(refusal);
    if (!refusal.isEmpty() || !value)
        return false;
    m_values << *value;
    m_field->clear();
    showPieces();
    Q_EMIT changed();
    return true;
}

void PieceChips::drop(int index)
{
    if (index < 0 || index >= m_values.size())
        return;
    m_values.removeAt(index);
    m_row->clearProblem();
    showPieces();
    m_field->setFocus(Qt::OtherFocusReason);
    Q_EMIT changed();
}

void PieceChips::refresh()
{
    showPieces();
}

void PieceChips::showPieces()
{
    clearLayout(m_chips);
    for (int i = 0; i < m_values.size(); ++i) {
        const QString figure = domain::formatNumber(m_values.at(i), 1, woodLocale());
        const bool marked = m_marked && m_marked(m_values.at(i));
        auto *chip =
            new QPushButton(icon(QStringLiteral("close"), Role::InkMuted),
                            marked ? QString(QStringLiteral("≈ ") + figure) : figure, m_holder);
        chip->setProperty("role", "quiet");
        // Ten of them have to fit: only as large as their figure.
        const Theme &look = theme(this);
        const QFontMetrics metrics(look.font(TextStyle::BodyStrong));
        chip->setFixedSize(metrics.horizontalAdvance(chip->text()) + look.px(44), look.px(30));
        chip->setLayoutDirection(Qt::RightToLeft);
        chip->setAccessibleName((marked ? tr("Piece %1: about %2 %3, indicative. Take it away")
                                        : tr("Piece %1: %2 %3. Take it away"))
                                    .arg(i + 1)
                                    .arg(figure, m_field->unit()));
        connect(chip, &QPushButton::clicked, this, [this, i] { drop(i); });
        m_chips->addWidget(chip);
        chip->show();
    }
    m_holder->setVisible(!m_values.isEmpty());
    m_holder->updateGeometry();
}

} // namespace rickyard::views
