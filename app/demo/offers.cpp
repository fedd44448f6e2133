#include "app/demo/draft.h"

namespace rickyard::app::demo {

namespace {

RecordId speciesCalled(const Draft &draft, const QString &name)
{
    for (const domain::Species &species : draft.books.species)
        if (species.name.compare(name, Qt::CaseInsensitive) == 0)
            return species.id;
    return 0;
}

struct Ask {
    RecordId supplier;
    const char *species;
    domain::SellUnit unit;
    int daysAgo;
    double count;
    double dollars;
    double delivery;
    double promised; // per cent, dry basis
    const char *note;
};

} // namespace

// Prices of four kinds of sale, close enough that the cheapest is not plain to see.
void addOffers(Draft &draft)
{
    const Ask asks[] = {
        {1, "Post oak", domain::SellUnit::HalfCord, 3, 2, 420, 40, 20, "Can bring it on a Sunday."},
        {2, "Post oak", domain::SellUnit::Cord, 5, 1, 360, 60, 20, "Says it was cut last winter."},
        {3, "Pecan", domain::SellUnit::FaceCord, 1, 3, 525, 0, 18, "Brings it free above two."},
        {2, "White oak", domain::SellUnit::Pound, 4, 3000, 345, 60, 25, "Weighed at the mill."},
        {3, "Eastern redcedar", domain::SellUnit::FaceCord, 1, 1, 90, 0, 20,
         "Thrown in cheap; it is not for the fire."},
    };
    for (const Ask &ask : asks) {
        const RecordId species = speciesCalled(draft, QString::fromUtf8(ask.species));
        if (species == 0)
            continue;
        domain::Offer offer;
        offer.supplier = ask.supplier;
        offer.species = species;
        offer.unit = ask.unit;
        offer.count = domain::Plain::rounded(ask.count * 1e6);
        if (ask.unit == domain::SellUnit::FaceCord)
            offer.stickLength = domain::Length::rounded(16 * domain::kMicrometresPerInch);
        offer.price = domain::Money::rounded(ask.dollars * 100);
        offer.delivery = domain::Money::rounded(ask.delivery * 100);
        offer.promised = Moisture::rounded(ask.promised * 1000);
        offer.made = draft.today().addDays(-ask.daysAgo);
        offer.note = QString::fromUtf8(ask.note);
        shelve(draft.books.offers, offer);
    }
}

} // namespace rickyard::app::demo
