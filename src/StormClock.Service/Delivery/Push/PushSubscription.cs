namespace StormClock.Service.Delivery.Push;

/// <summary>One device of one person that takes notifications of one garden.</summary>
/// <param name="Id">Made from garden, person and endpoint; named in reminder keys, so that nothing secret is.</param>
/// <param name="DeviceName">As the person calls it.</param>
/// <param name="Endpoint">Where its push service takes messages for it; whoever knows it can send rubbish, so it is never shown.</param>
public sealed record PushSubscription(
    string Id, string GardenId, string PersonId, string DeviceName, string Endpoint, PushKeys Keys, Instant Added)
{
    /// <summary>Shows whose it is and never the endpoint.</summary>
    public override string ToString() => $"{DeviceName} of {GardenId}/{PersonId}";
}
